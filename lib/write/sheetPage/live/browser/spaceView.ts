/// <reference lib="dom" />
import type { LiveData } from '../liveData.js';
import type { Turning } from './turning.js';

/** The set in space. */
export interface SpaceView {
  draw(): void;
  turnView(around: number, over: number): void;
  zoom(factor: number): void;
  /** Cuts the picture: across the axis (`z`), along it (`y`) or not; share 0 … 1 of the way through. */
  cut(way: 'none' | 'y' | 'z', share: number): void;
}

/**
 * The meshes themselves, drawn by the graphics card. Runs in the page, so it names nothing outside itself.
 * @returns null where the browser cannot
 */
export function spaceView(canvas: HTMLCanvasElement, data: LiveData, turning: Turning): SpaceView | null {
  const gl = canvas.getContext('webgl2', { antialias: true });
  if (!gl) return null;
  const program = gl.createProgram();
  const compile = (type: number, source: string) => {
    const shader = gl.createShader(type)!;
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  };
  compile(
    gl.VERTEX_SHADER,
    `#version 300 es
    in vec3 packed;
    uniform vec3 origin, scale, place;
    uniform float angle;
    uniform mat4 view;
    out vec3 world;
    void main() {
      vec3 p = origin + scale * packed;
      float c = cos(angle), s = sin(angle);
      world = vec3(p.x * c - p.y * s, p.x * s + p.y * c, p.z) + place;
      gl_Position = view * vec4(world, 1.0);
    }`,
  );
  compile(
    gl.FRAGMENT_SHADER,
    `#version 300 es
    precision highp float;
    in vec3 world;
    uniform vec3 colour, light;
    uniform vec4 plane;
    out vec4 shown;
    void main() {
      if (dot(plane.xyz, world) > plane.w) discard;
      vec3 n = normalize(cross(dFdx(world), dFdy(world)));
      float bright = gl_FrontFacing ? 0.45 + 0.55 * abs(dot(n, light)) : 0.35;
      float stripe = step(0.5, fract((gl_FragCoord.x + gl_FragCoord.y) / 9.0));
      vec3 inside = mix(colour * 0.55, colour * 0.8, stripe);
      shown = vec4(gl_FrontFacing ? colour * bright : inside, 1.0);
    }`,
  );
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS)) return null;
  gl.useProgram(program);
  gl.enable(gl.DEPTH_TEST);

  const bytes = (text: string) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const packedAt = gl.getAttribLocation(program, 'packed');
  const shapes = data.shapes.map(({ positions, triangles }) => {
    const vertices = gl.createVertexArray();
    gl.bindVertexArray(vertices);
    gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
    gl.bufferData(gl.ARRAY_BUFFER, bytes(positions), gl.STATIC_DRAW);
    gl.enableVertexAttribArray(packedAt);
    gl.vertexAttribPointer(packedAt, 3, gl.UNSIGNED_SHORT, false, 0, 0);
    const indices = bytes(triangles);
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, gl.createBuffer());
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, indices, gl.STATIC_DRAW);
    return { vertices, count: indices.length / 4 };
  });
  const at = (name: string) => gl.getUniformLocation(program, name);
  const uniforms = {
    origin: at('origin'),
    scale: at('scale'),
    place: at('place'),
    angle: at('angle'),
    view: at('view'),
    colour: at('colour'),
    light: at('light'),
    plane: at('plane'),
  };
  let [around, over, zoom] = [-0.6, 0.75, 1];
  let plane: [number, number, number, number] = [0, 0, 0, 1];
  const [low, high] = data.heights;
  const size = 1.02 * data.ball;

  function draw() {
    if (!gl) return;
    const dense = window.devicePixelRatio || 1;
    const [width, height] = [canvas.clientWidth * dense, canvas.clientHeight * dense].map(Math.round);
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
    gl.viewport(0, 0, width, height);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    // An orthographic view: rows look right, up and towards the eye.
    const [ca, sa, co, so] = [Math.cos(around), Math.sin(around), Math.cos(over), Math.sin(over)];
    const right = [ca, sa, 0];
    const eye = [sa * so, -ca * so, co];
    const up = [-sa * co, ca * co, so];
    const s = zoom / size;
    const [sx, sy] = width > height ? [(s * height) / width, s] : [s, (s * width) / height];
    const middle = [data.middle[0], data.middle[1], (low + high) / 2];
    const dot = (a: number[], b: number[]) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    const rows = [
      [...right.map((v) => v * sx), -dot(right, middle) * sx],
      [...up.map((v) => v * sy), -dot(up, middle) * sy],
      [...eye.map((v) => -v / (4 * size)), dot(eye, middle) / (4 * size)],
      [0, 0, 0, 1],
    ];
    const view = [0, 1, 2, 3].flatMap((column) => rows.map((row) => row[column]));
    gl.uniformMatrix4fv(uniforms.view, false, view);
    gl.uniform3f(uniforms.light, ...(eye.map((v, i) => 0.8 * v + 0.5 * up[i] + 0.3 * right[i]) as Triple));
    gl.uniform4f(uniforms.plane, ...plane);
    for (const body of data.bodies) {
      const { x, y, angle } = turning.place(body);
      const shape = data.shapes[body.shape];
      gl.uniform3f(uniforms.origin, ...shape.origin);
      gl.uniform3f(uniforms.scale, ...shape.step);
      gl.uniform3f(uniforms.place, x, y, 0);
      gl.uniform1f(uniforms.angle, body.angle + angle);
      gl.uniform3f(uniforms.colour, ...(body.colour.map((part) => part / 255) as Triple));
      gl.bindVertexArray(shapes[body.shape].vertices);
      gl.drawElements(gl.TRIANGLES, shapes[body.shape].count, gl.UNSIGNED_INT, 0);
    }
  }
  type Triple = [number, number, number];

  const view: SpaceView = {
    draw,
    turnView(byAround, byOver) {
      around += byAround;
      over = Math.min(Math.PI, Math.max(0, over + byOver));
      draw();
    },
    zoom(factor) {
      zoom = Math.min(12, Math.max(0.4, zoom * factor));
      draw();
    },
    cut(way, share) {
      // What lies beyond the plane is left out: above it, or in front of it.
      if (way === 'z') plane = [0, 0, 1, low + share * (high - low)];
      else if (way === 'y') plane = [0, -1, 0, (2 * share - 1) * data.reach - data.middle[1]];
      else plane = [0, 0, 0, 1];
      draw();
    },
  };
  let from: [number, number] | null = null;
  canvas.addEventListener('pointerdown', (event) => {
    from = [event.clientX, event.clientY];
    canvas.setPointerCapture(event.pointerId);
  });
  canvas.addEventListener('pointermove', (event) => {
    if (!from) return;
    view.turnView(-(event.clientX - from[0]) / 120, -(event.clientY - from[1]) / 120);
    from = [event.clientX, event.clientY];
  });
  for (const end of ['pointerup', 'pointercancel'] as const)
    canvas.addEventListener(end, () => {
      from = null;
    });
  return view;
}
