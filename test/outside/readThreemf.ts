import lib3mf, {
  type Held,
  type Iterator,
  type Lib3mf,
  type MeshObject,
  type Model,
} from '@3mfconsortium/lib3mf';
import type { Mesh } from '../../lib/solid/mesh.js';

/** What lib3mf, the 3MF Consortium's own reader, finds in a package in its strict mode. */
export interface Found {
  warnings: number;
  inMillimetres: boolean;
  meshes: { name: string; mesh: Mesh; manifoldAndOriented: boolean; valid: boolean; typeIsModel: boolean }[];
  assemblies: { name: string; components: { id: number; moved: boolean }[] }[];
  /** `transform`: twelve numbers, row by row. */
  items: { id: number; transform: number[] }[];
  metadata: [name: string, value: string][];
  /** The picture that stands for the package, where it has one. */
  thumbnail?: { path: string; bytes: Uint8Array };
}

/** Reads a package; throws what lib3mf throws when it is not one. */
export async function readThreemf(bytes: Uint8Array): Promise<Found> {
  const library = await lib3mf();
  const held: Held[] = [];
  const hold = <T extends Held>(thing: T): T => {
    held.push(thing);
    return thing;
  };
  library.FS.writeFile('/package.3mf', bytes);
  const model = hold(hold(new library.CWrapper()).CreateModel());
  const reader = hold(model.QueryReader('3mf'));
  reader.SetStrictModeActive(true);
  reader.ReadFromFile('/package.3mf');
  const found = collect(library, model, reader.GetWarningCount(), hold);
  for (const thing of held.reverse()) thing.delete();
  return found;
}

type Hold = <T extends Held>(thing: T) => T;

function collect(library: Lib3mf, model: Model, warnings: number, hold: Hold): Found {
  const meshes = each(hold(model.GetMeshObjects()), (all) => hold(all.GetCurrentMeshObject()));
  const assemblies = each(hold(model.GetComponentsObjects()), (all) =>
    hold(all.GetCurrentComponentsObject()),
  );
  const items = each(hold(model.GetBuildItems()), (all) => hold(all.GetCurrent()));
  const group = hold(model.GetMetaDataGroup());
  return {
    ...thumbnailOf(library, model, hold),
    warnings,
    inMillimetres: model.GetUnit() === library.eModelUnit.MilliMeter,
    meshes: meshes.map((object) => ({
      name: object.GetName(),
      mesh: meshOf(object),
      manifoldAndOriented: object.IsManifoldAndOriented(),
      valid: object.IsValid(),
      typeIsModel: object.GetType() === library.eObjectType.Model,
    })),
    assemblies: assemblies.map((object) => ({
      name: object.GetName(),
      components: Array.from({ length: object.GetComponentCount() }, (_, i) => {
        const component = hold(object.GetComponent(i));
        return { id: component.GetObjectResourceID(), moved: component.HasTransform() };
      }),
    })),
    items: items.map((item) => {
      const fields = hold(item.GetObjectTransform());
      const rows = [0, 1, 2, 3] as const;
      const transform = rows.flatMap((i) =>
        ([0, 1, 2] as const).map((j) => fields[`get_Fields_${i}_${j}`]()),
      );
      return { id: item.GetObjectResourceID(), transform };
    }),
    metadata: Array.from({ length: group.GetMetaDataCount() }, (_, i) => {
      const entry = hold(group.GetMetaData(i));
      return [entry.GetName(), entry.GetValue()];
    }),
  };
}

function thumbnailOf(library: Lib3mf, model: Model, hold: Hold): Pick<Found, 'thumbnail'> {
  if (!model.HasPackageThumbnailAttachment()) return {};
  const attachment = hold(model.GetPackageThumbnailAttachment());
  attachment.WriteToFile('/thumbnail.png');
  return { thumbnail: { path: attachment.GetPath(), bytes: library.FS.readFile('/thumbnail.png') } };
}

function each<I extends Iterator, T>(all: I, current: (all: I) => T): T[] {
  const list: T[] = [];
  while (all.MoveNext()) list.push(current(all));
  return list;
}

function meshOf(object: MeshObject): Mesh {
  const positions = new Float64Array(3 * object.GetVertexCount());
  for (let i = 0; i < positions.length; i += 3) {
    const vertex = object.GetVertex(i / 3);
    positions.set([vertex.get_Coordinates0(), vertex.get_Coordinates1(), vertex.get_Coordinates2()], i);
    vertex.delete();
  }
  const triangles = new Uint32Array(3 * object.GetTriangleCount());
  for (let i = 0; i < triangles.length; i += 3) {
    const triangle = object.GetTriangle(i / 3);
    triangles.set([triangle.get_Indices0(), triangle.get_Indices1(), triangle.get_Indices2()], i);
    triangle.delete();
  }
  return { positions, triangles };
}
