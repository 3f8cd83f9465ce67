/** The few functions of the 3MF Consortium's reader that the tests call; the package ships no types. */
declare module '@3mfconsortium/lib3mf' {
  /** What lives in the reader's own memory and must be let go there. */
  interface Held {
    delete(): void;
  }
  interface Iterator extends Held {
    MoveNext(): boolean;
  }
  interface Vertex extends Held {
    get_Coordinates0(): number;
    get_Coordinates1(): number;
    get_Coordinates2(): number;
  }
  interface Triangle extends Held {
    get_Indices0(): number;
    get_Indices1(): number;
    get_Indices2(): number;
  }
  interface MeshObject extends Held {
    GetResourceID(): number;
    GetName(): string;
    GetVertexCount(): number;
    GetTriangleCount(): number;
    GetVertex(index: number): Vertex;
    GetTriangle(index: number): Triangle;
    IsManifoldAndOriented(): boolean;
    IsValid(): boolean;
    GetType(): unknown;
  }
  interface Component extends Held {
    GetObjectResourceID(): number;
    HasTransform(): boolean;
    GetTransform(): Transform;
  }
  interface ComponentsObject extends Held {
    GetResourceID(): number;
    GetName(): string;
    GetComponentCount(): number;
    GetComponent(index: number): Component;
  }
  type Transform = Held & Record<`get_Fields_${0 | 1 | 2 | 3}_${0 | 1 | 2}`, () => number>;
  interface BuildItem extends Held {
    GetObjectResourceID(): number;
    GetObjectTransform(): Transform;
  }
  interface MetaData extends Held {
    GetName(): string;
    GetValue(): string;
  }
  interface Reader extends Held {
    SetStrictModeActive(active: boolean): void;
    ReadFromFile(path: string): void;
    GetWarningCount(): number;
  }
  interface Attachment extends Held {
    GetPath(): string;
    GetRelationShipType(): string;
    WriteToFile(path: string): void;
  }
  interface Model extends Held {
    HasPackageThumbnailAttachment(): boolean;
    GetPackageThumbnailAttachment(): Attachment;
    QueryReader(kind: '3mf'): Reader;
    GetUnit(): unknown;
    GetMeshObjects(): Iterator & { GetCurrentMeshObject(): MeshObject };
    GetComponentsObjects(): Iterator & { GetCurrentComponentsObject(): ComponentsObject };
    GetBuildItems(): Iterator & { GetCurrent(): BuildItem };
    GetMetaDataGroup(): Held & { GetMetaDataCount(): number; GetMetaData(index: number): MetaData };
  }
  interface Lib3mf {
    FS: { writeFile(path: string, bytes: Uint8Array): void; readFile(path: string): Uint8Array };
    CWrapper: new () => Held & { CreateModel(): Model };
    eModelUnit: { MilliMeter: unknown };
    eObjectType: { Model: unknown };
  }
  export default function lib3mf(): Promise<Lib3mf>;
}
