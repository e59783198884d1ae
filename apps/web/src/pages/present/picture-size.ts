/** A wide picture lower than this is laid out like one in a list of videos: here it is drawn larger and shown smaller. */
const LEAST_HEIGHT = 1080;

/** The picture that fills a stage of this size, px. */
export function pictureSize({ width, height }: { width: number; height: number }): {
  width: number;
  height: number;
} {
  const scale = width > height ? Math.max(1, LEAST_HEIGHT / height) : 1;
  return { width: Math.round(scale * width), height: Math.round(scale * height) };
}
