import lib3mf, {
  type ComponentsObject,
  type Held,
  type Iterator,
  type Lib3mf,
  type MeshObject,
  type Model,
  type Transform,
} from '@3mfconsortium/lib3mf';
import type { Mesh } from '../../lib/solid/mesh.js';

/** What lib3mf, the 3MF Consortium's own reader, finds in a package in its strict mode. */
export interface Found {
  warnings: number;
  inMillimetres: boolean;
  /** Every object that is one body, in the order of ids: a mesh, or another object's mesh turned and moved. */
  meshes: Body[];
  /** How many meshes the file stores for them. */
  stored: number;
  assemblies: { name: string; components: { id: number; moved: boolean }[] }[];
  /** `transform`: twelve numbers, row by row. */
  items: { id: number; transform: number[] }[];
  metadata: [name: string, value: string][];
  /** The picture that stands for the package, where it has one. */
  thumbnail?: { path: string; bytes: Uint8Array };
}

/** One body of a package. */
export interface Body {
  name: string;
  mesh: Mesh;
  manifoldAndOriented: boolean;
  valid: boolean;
  typeIsModel: boolean;
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
  const composed = each(hold(model.GetComponentsObjects()), (all) => hold(all.GetCurrentComponentsObject()));
  const isCopy = (object: ComponentsObject) =>
    object.GetComponentCount() === 1 && hold(object.GetComponent(0)).HasTransform();
  const assemblies = composed.filter((object) => !isCopy(object));
  const bodies = new Map<number, Body>(
    meshes.map((object) => [
      object.GetResourceID(),
      {
        name: object.GetName(),
        mesh: meshOf(object),
        manifoldAndOriented: object.IsManifoldAndOriented(),
        valid: object.IsValid(),
        typeIsModel: object.GetType() === library.eObjectType.Model,
      },
    ]),
  );
  for (const object of composed.filter(isCopy)) {
    const component = hold(object.GetComponent(0));
    const { mesh, ...first } = bodies.get(component.GetObjectResourceID())!;
    const moved = transformed(mesh, fieldsOf(hold(component.GetTransform())));
    bodies.set(object.GetResourceID(), { ...first, name: object.GetName(), mesh: moved });
  }
  const items = each(hold(model.GetBuildItems()), (all) => hold(all.GetCurrent()));
  const group = hold(model.GetMetaDataGroup());
  return {
    ...thumbnailOf(library, model, hold),
    warnings,
    inMillimetres: model.GetUnit() === library.eModelUnit.MilliMeter,
    meshes: [...bodies].sort(([a], [b]) => a - b).map(([, body]) => body),
    stored: meshes.length,
    assemblies: assemblies.map((object) => ({
      name: object.GetName(),
      components: Array.from({ length: object.GetComponentCount() }, (_, i) => {
        const component = hold(object.GetComponent(i));
        return { id: component.GetObjectResourceID(), moved: component.HasTransform() };
      }),
    })),
    items: items.map((item) => ({
      id: item.GetObjectResourceID(),
      transform: fieldsOf(hold(item.GetObjectTransform())),
    })),
    metadata: Array.from({ length: group.GetMetaDataCount() }, (_, i) => {
      const entry = hold(group.GetMetaData(i));
      return [entry.GetName(), entry.GetValue()];
    }),
  };
}

/** Twelve numbers, row by row; a point is a row that is multiplied from the left. */
function fieldsOf(fields: Transform): number[] {
  const rows = [0, 1, 2, 3] as const;
  return rows.flatMap((i) => ([0, 1, 2] as const).map((j) => fields[`get_Fields_${i}_${j}`]()));
}

function transformed({ positions, triangles }: Mesh, m: readonly number[]): Mesh {
  const moved = new Float64Array(positions.length);
  for (let i = 0; i < moved.length; i += 3)
    for (let j = 0; j < 3; j++)
      moved[i + j] =
        positions[i] * m[j] + positions[i + 1] * m[3 + j] + positions[i + 2] * m[6 + j] + m[9 + j];
  return { positions: moved, triangles };
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
