import { faceOf, type Scene, type SceneNode } from '@pullbook/charts';
import type { Pdf } from './new-pdf.ts';
import { putText, widthOfText } from './pdf-text.ts';
import { pictureBytes } from './picture-bytes.ts';

/** Draws a scene as vectors, its text as text, with its left upper corner there; `scale`: points for one of its pixels. */
export function drawSceneIn(pdf: Pdf, { nodes }: Scene, at: { x: number; y: number; scale: number }): void {
  pdf.save();
  pdf.translate(at.x, at.y).scale(at.scale);
  for (const node of nodes) drawNode(pdf, node);
  pdf.restore();
}

function drawNode(pdf: Pdf, node: SceneNode): void {
  const { tag, attributes, children } = node;
  const number = (name: string) => Number(attributes[name] ?? 0);
  pdf.save();
  const whole = Number(attributes.opacity ?? 1);
  pdf.fillOpacity(whole * Number(attributes['fill-opacity'] ?? 1));
  pdf.strokeOpacity(whole * Number(attributes['stroke-opacity'] ?? 1));
  switch (tag) {
    case 'g':
      for (const child of children) drawNode(pdf, child);
      break;
    case 'path':
      pdf.path(String(attributes.d ?? ''));
      paint(pdf, attributes);
      break;
    case 'line':
      pdf.moveTo(number('x1'), number('y1')).lineTo(number('x2'), number('y2'));
      paint(pdf, { ...attributes, fill: 'none' });
      break;
    case 'rect':
      if ('rx' in attributes)
        pdf.roundedRect(number('x'), number('y'), number('width'), number('height'), number('rx'));
      else pdf.rect(number('x'), number('y'), number('width'), number('height'));
      paint(pdf, attributes);
      break;
    case 'circle':
      pdf.circle(number('cx'), number('cy'), number('r'));
      paint(pdf, attributes);
      break;
    case 'text':
      drawText(pdf, node);
      break;
    case 'image':
      pdf.image(pictureBytes(String(attributes.href)), number('x'), number('y'), {
        width: number('width'),
        height: number('height'),
      });
      break;
    case 'title':
      break;
  }
  pdf.restore();
}

/** Fill and stroke of the path that was just laid down; SVG fills black where it says nothing. */
function paint(pdf: Pdf, attributes: SceneNode['attributes']): void {
  const fill = String(attributes.fill ?? '#000000');
  const stroke = String(attributes.stroke ?? 'none');
  if (stroke !== 'none') {
    pdf.lineWidth(Number(attributes['stroke-width'] ?? 1));
    pdf.lineJoin(attributes['stroke-linejoin'] === 'round' ? 'round' : 'miter');
    pdf.lineCap(attributes['stroke-linecap'] === 'round' ? 'round' : 'butt');
    const dash = String(attributes['stroke-dasharray'] ?? '')
      .split(/[ ,]+/u)
      .filter(Boolean)
      .map(Number);
    if (dash.length > 0) pdf.dash(dash as unknown as number, {});
  }
  if (fill !== 'none' && stroke !== 'none') pdf.fillAndStroke(fill, stroke);
  else if (fill !== 'none') pdf.fill(fill);
  else if (stroke !== 'none') pdf.stroke(stroke);
}

function drawText(pdf: Pdf, { attributes, text = '' }: SceneNode): void {
  const look = {
    face: faceOf(attributes) ?? 'sans',
    size: Number(attributes['font-size']),
    colour: String(attributes.fill ?? '#000000'),
  };
  const share = { start: 0, middle: 0.5, end: 1 }[String(attributes['text-anchor'] ?? 'start')] ?? 0;
  const left = Number(attributes.x) - (share === 0 ? 0 : share * widthOfText(pdf, text, look));
  putText(pdf, text, look, left, Number(attributes.y));
}
