import type { Scene, SceneNode } from '@pullbook/charts';
import { moved } from './transform.ts';

type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** Pictures that a scene names, by their address, decoded beforehand: painting itself waits for nothing. */
export type Pictures = ReadonlyMap<string, CanvasImageSource>;

/** What a group hands on to what is in it. */
interface Inherited {
  fill: string;
  fillOpacity: number;
  stroke: string;
  strokeOpacity: number;
  strokeWidth: number;
  dash: number[];
  join: CanvasLineJoin;
  cap: CanvasLineCap;
  font: { family: string; sizePx: number; weight: string };
  anchor: 'start' | 'middle' | 'end';
  /** The edge of a letter or shape under its fill instead of over it. */
  strokeFirst: boolean;
}

/** As SVG has them where nothing is said. */
const INITIAL: Inherited = {
  fill: '#000000',
  fillOpacity: 1,
  stroke: 'none',
  strokeOpacity: 1,
  strokeWidth: 1,
  dash: [],
  join: 'miter',
  cap: 'butt',
  font: { family: 'sans-serif', sizePx: 16, weight: '400' },
  anchor: 'start',
  strokeFirst: false,
};

const READ: Record<string, (value: string, look: Inherited) => Partial<Inherited>> = {
  fill: (fill) => ({ fill }),
  'fill-opacity': (value) => ({ fillOpacity: Number(value) }),
  stroke: (stroke) => ({ stroke }),
  'stroke-opacity': (value) => ({ strokeOpacity: Number(value) }),
  'stroke-width': (value) => ({ strokeWidth: Number(value) }),
  'stroke-dasharray': (value) => ({ dash: value === 'none' ? [] : value.split(/[\s,]+/).map(Number) }),
  'stroke-linejoin': (value) => ({ join: value as CanvasLineJoin }),
  'stroke-linecap': (value) => ({ cap: value as CanvasLineCap }),
  'font-family': (family, { font }) => ({ font: { ...font, family } }),
  'font-size': (value, { font }) => ({ font: { ...font, sizePx: Number(value) } }),
  'font-weight': (weight, { font }) => ({ font: { ...font, weight } }),
  'text-anchor': (value) => ({ anchor: value as Inherited['anchor'] }),
  'paint-order': (value) => ({ strokeFirst: value.startsWith('stroke') }),
};

/** What says where a node is, and is read by who draws it. */
const PLACES = new Set(
  'd x y x1 y1 x2 y2 cx cy r rx ry width height href opacity transform preserveAspectRatio'.split(' '),
);
/** For who reads the drawing as a document; nothing of it is seen. */
const UNSEEN = /^(class|id|role|aria-.*|data-.*)$/;

/**
 * Paints a drawing on a canvas: the same that its SVG shows. An attribute that this does not know throws: a picture that
 * leaves something out in silence would be another one.
 *
 * @example paintScene(canvas.getContext('2d')!, scene, { width: 1920, height: 1080 }, new Map())
 */
export function paintScene(
  pen: Pen,
  scene: Scene,
  size: { width: number; height: number },
  pictures: Pictures,
): void {
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.globalAlpha = 1;
  pen.clearRect(0, 0, size.width, size.height);
  pen.setTransform(size.width / scene.width, 0, 0, size.height / scene.height, 0, 0);
  for (const node of scene.nodes) paintNode(pen, node, INITIAL, 1, pictures);
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.globalAlpha = 1;
}

function looksOf(node: SceneNode, inherited: Inherited): Inherited {
  let look = inherited;
  for (const name in node.attributes) {
    const read = READ[name];
    if (read !== undefined) look = { ...look, ...read(String(node.attributes[name]), look) };
    else if (!PLACES.has(name) && !UNSEEN.test(name)) {
      throw new Error(`A drawing has "${name}" on <${node.tag}>, which the canvas cannot paint.`);
    }
  }
  return look;
}

function paintNode(pen: Pen, node: SceneNode, inherited: Inherited, alpha: number, pictures: Pictures): void {
  if (node.tag === 'title') return;
  const look = looksOf(node, inherited);
  const { opacity = 1, transform } = node.attributes;
  const opaque = alpha * Number(opacity);
  if (transform !== undefined) {
    pen.save();
    moved(pen, String(transform));
  }
  if (node.tag === 'g') for (const child of node.children) paintNode(pen, child, look, opaque, pictures);
  else if (node.tag === 'text') write(pen, node, look, opaque);
  else if (node.tag === 'image') paste(pen, node, opaque, pictures);
  else paintShape(pen, shapeOf(node), look, opaque);
  if (transform !== undefined) pen.restore();
}

const numbers = (node: SceneNode, ...names: string[]): number[] =>
  names.map((name) => Number(node.attributes[name] ?? 0));

function shapeOf(node: SceneNode): Path2D {
  if (node.tag === 'path') return new Path2D(String(node.attributes.d ?? ''));
  const path = new Path2D();
  if (node.tag === 'line') {
    const [x1, y1, x2, y2] = numbers(node, 'x1', 'y1', 'x2', 'y2') as [number, number, number, number];
    path.moveTo(x1, y1);
    path.lineTo(x2, y2);
  } else if (node.tag === 'circle') {
    const [x, y, radius] = numbers(node, 'cx', 'cy', 'r') as [number, number, number];
    path.arc(x, y, radius, 0, 2 * Math.PI);
    path.closePath();
  } else {
    const [x, y, width, height] = numbers(node, 'x', 'y', 'width', 'height') as [
      number,
      number,
      number,
      number,
    ];
    const corner = Math.min(Number(node.attributes.rx ?? node.attributes.ry ?? 0), width / 2, height / 2);
    if (corner > 0) path.roundRect(x, y, width, height, corner);
    else path.rect(x, y, width, height);
  }
  return path;
}

const paintShape = (pen: Pen, shape: Path2D, look: Inherited, alpha: number): void =>
  paint(
    pen,
    look,
    alpha,
    () => pen.fill(shape),
    () => pen.stroke(shape),
  );

/** Fill and edge, each where there is one, in their order. */
function paint(pen: Pen, look: Inherited, alpha: number, fill: () => void, stroke: () => void): void {
  const edge = () => {
    if (look.stroke === 'none' || look.strokeWidth <= 0) return;
    setStroke(pen, look, alpha);
    stroke();
  };
  if (look.strokeFirst) edge();
  if (look.fill !== 'none') {
    pen.globalAlpha = alpha * look.fillOpacity;
    pen.fillStyle = look.fill;
    fill();
  }
  if (!look.strokeFirst) edge();
}

function setStroke(pen: Pen, look: Inherited, alpha: number): void {
  pen.globalAlpha = alpha * look.strokeOpacity;
  pen.strokeStyle = look.stroke;
  pen.lineWidth = look.strokeWidth;
  pen.lineJoin = look.join;
  pen.lineCap = look.cap;
  pen.miterLimit = 4;
  pen.setLineDash(look.dash);
}

const ALIGNED = { start: 'left', middle: 'center', end: 'right' } as const;

function write(pen: Pen, node: SceneNode, look: Inherited, alpha: number): void {
  const { family, sizePx, weight } = look.font;
  const [x, y] = numbers(node, 'x', 'y') as [number, number];
  const text = node.text ?? '';
  pen.font = `${weight} ${sizePx}px ${family}`;
  pen.textAlign = ALIGNED[look.anchor];
  pen.textBaseline = 'alphabetic';
  paint(
    pen,
    look,
    alpha,
    () => pen.fillText(text, x, y),
    () => pen.strokeText(text, x, y),
  );
}

function paste(pen: Pen, node: SceneNode, alpha: number, pictures: Pictures): void {
  const picture = pictures.get(String(node.attributes.href ?? ''));
  if (picture === undefined) return;
  const [x, y, width, height] = numbers(node, 'x', 'y', 'width', 'height') as [
    number,
    number,
    number,
    number,
  ];
  pen.globalAlpha = alpha;
  pen.drawImage(picture, x, y, width, height);
}
