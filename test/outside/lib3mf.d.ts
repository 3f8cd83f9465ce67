/** The few functions of the 3MF Consortium's reader that the tests call; the package ships no types. */
declare module '@3mfconsortium/lib3mf' {
  interface Iterator {
    MoveNext(): boolean;
    Count(): bigint;
  }
  interface Vertex {
    get_Coordinates0(): number;
    get_Coordinates1(): number;
    get_Coordinates2(): number;
  }
  interface Triangle {
    get_Indices0(): number;
    get_Indices1(): number;
    get_Indices2(): number;
  }
  interface MeshObject {
    GetName(): string;
    GetVertexCount(): number;
    GetTriangleCount(): number;
    GetVertex(index: number): Vertex;
    GetTriangle(index: number): Triangle;
    IsManifoldAndOriented(): boolean;
    IsValid(): boolean;
    GetType(): unknown;
  }
  interface ComponentsObject {
    GetName(): string;
    GetComponentCount(): number;
    GetComponent(index: number): { GetObjectResourceID(): number; HasTransform(): boolean };
  }
  interface BuildItem {
    GetObjectResourceID(): number;
    GetObjectTransform(): Record<`get_Fields_${0 | 1 | 2 | 3}_${0 | 1 | 2}`, () => number>;
  }
  interface Reader {
    SetStrictModeActive(active: boolean): void;
    ReadFromFile(path: string): void;
    GetWarningCount(): number;
  }
  interface Model {
    QueryReader(kind: '3mf'): Reader;
    GetUnit(): unknown;
    GetMeshObjects(): Iterator & { GetCurrentMeshObject(): MeshObject };
    GetComponentsObjects(): Iterator & { GetCurrentComponentsObject(): ComponentsObject };
    GetBuildItems(): Iterator & { GetCurrent(): BuildItem };
    GetMetaDataGroup(): {
      GetMetaDataCount(): number;
      GetMetaData(index: number): { GetName(): string; GetValue(): string };
    };
  }
  interface Lib3mf {
    FS: { writeFile(path: string, bytes: Uint8Array): void };
    CWrapper: new () => { CreateModel(): Model };
    eModelUnit: { MilliMeter: unknown };
    eObjectType: { Model: unknown };
  }
  export default function lib3mf(): Promise<Lib3mf>;
}
