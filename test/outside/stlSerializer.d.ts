/** The one function of @jscad/stl-serializer that the tests call; the package ships no types. */
declare module '@jscad/stl-serializer' {
  import type { geometries } from '@jscad/modeling';
  export function serialize(options: { binary: true }, ...solids: geometries.geom3.Geom3[]): ArrayBuffer[];
}
