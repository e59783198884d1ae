import { type ClipStep, clipFrameKey, drawClipFrame, type ThemeName } from '@pullbook/charts';
import { type RefObject, useEffect, useRef } from 'react';
import { type Pictures, paintScene } from '../../canvas/paint-scene.ts';

const wantsStillness = matchMedia('(prefers-reduced-motion: reduce)');

/**
 * Draws a step on a canvas as large as the stage, along its time from when `drawing` changed, then lets it stand. Another size or theme goes on
 * where the drawing is. Who wants no motion has it at once.
 */
export function useDrawnStep(
  canvas: RefObject<HTMLCanvasElement | null>,
  step: ClipStep,
  drawing: number,
  stage: { width: number; height: number },
  picture: { width: number; height: number },
  theme: ThemeName,
  pictures: Pictures | null,
): void {
  const begun = useRef<{ drawing: number; at: number } | null>(null);
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (!pen || stage.width === 0 || stage.height === 0 || pictures === null) return;
    if (begun.current?.drawing !== drawing) begun.current = { drawing, at: performance.now() };
    const { at } = begun.current;
    const clip = { steps: [step] };
    const ready = step.seconds * step.drawingShare;
    const pixels = { width: pen.canvas.width, height: pen.canvas.height };
    let shown = '';
    let asked = 0;
    const draw = () => {
      const gone = wantsStillness.matches ? step.seconds : (performance.now() - at) / 1000;
      const stands = gone >= ready;
      const seconds = stands ? step.seconds : gone;
      const key = clipFrameKey(clip, seconds);
      if (key !== shown) {
        const scene = drawClipFrame(clip, seconds, { ...picture, theme, ground: true });
        paintScene(pen, scene, pixels, pictures);
        shown = key;
      }
      if (!stands) asked = requestAnimationFrame(draw);
    };
    draw();
    return () => cancelAnimationFrame(asked);
  }, [canvas, step, drawing, stage, picture, theme, pictures]);
}
