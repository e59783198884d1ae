import type { EngineRow } from '../api/edge.ts';

/** Engines to choose from. Where two bear one name their builds tell them apart. */
export function engineChoices(engines: readonly EngineRow[]): { value: string; text: string }[] {
  return engines.map(({ id, name, buildRevision }) => {
    const isAlone = engines.every((other) => other.id === id || other.name !== name);
    return { value: id, text: isAlone || buildRevision === '' ? name : `${name}, build ${buildRevision}` };
  });
}
