import { type Audience, type Cell, OPEN_AUDIENCE } from '@pullbook/core/pull';
import {
  combinationFromEdge,
  type EdgeCombination,
  type EdgePull,
  edgeFromCombination,
} from './edge-book.ts';
import { type EdgeEnquiry, edgeFromEnquiry, enquiryFromEdge } from './edge-enquiry.ts';
import {
  type EdgeCompressorMap,
  type EdgePrediction,
  edgeFromMap,
  edgeFromPrediction,
  mapFromEdge,
  predictionFromEdge,
} from './edge-match.ts';
import { type EdgePublication, edgeFromPublication, publicationFromEdge } from './edge-publication.ts';
import { EXPORT_FORMAT, EXPORT_SCHEMA_VERSION } from './export-names.ts';
import type { ExportedBook } from './exported-book.ts';

/** A cell with units in its keys. */
export type EdgeCell = Omit<Cell, 'altitude' | 'momentOfInertia'> & {
  altitudeM: number | null;
  momentOfInertiaKgM2: number | null;
};

/** An entry of the log; exports made before entries had global names lack the three. */
type LogEntry = ExportedBook['log'][number];
type EdgeLogEntry = Omit<LogEntry, 'uid' | 'undoes' | 'together'> &
  Partial<Pick<LogEntry, 'uid' | 'undoes' | 'together'>>;

/** What stands in `book.json`. What an export of an earlier day lacks is optional. */
export interface BookJson
  extends Pick<ExportedBook, 'info' | 'engines' | 'packages' | 'setUps' | 'sessions' | 'files'> {
  format: string;
  schemaVersion: number;
  combinations: EdgeCombination[];
  pulls: EdgePull[];
  trials: (Omit<ExportedBook['trials'][number], 'audience'> & { audience?: Audience })[];
  cells?: EdgeCell[];
  layouts?: ExportedBook['layouts'];
  silenced?: ExportedBook['silenced'];
  predictions?: EdgePrediction[];
  compressorMaps?: EdgeCompressorMap[];
  publications?: EdgePublication[];
  enquiries?: EdgeEnquiry[];
  settings?: ExportedBook['settings'];
  withdrawn?: ExportedBook['withdrawn'];
  log: EdgeLogEntry[];
  originals: { hash: string; name: string; path: string }[];
}

/** A book without its pulls as it stands in `book.json`. */
export function bookToJson(
  {
    pulls: _,
    combinations,
    cells,
    predictions,
    compressorMaps,
    publications,
    enquiries,
    ...rest
  }: ExportedBook,
  pulls: EdgePull[],
  originals: BookJson['originals'],
): BookJson {
  return {
    format: EXPORT_FORMAT,
    schemaVersion: EXPORT_SCHEMA_VERSION,
    ...rest,
    combinations: combinations.map(edgeFromCombination),
    cells: cells.map(edgeFromCell),
    predictions: predictions.map(edgeFromPrediction),
    compressorMaps: compressorMaps.map(edgeFromMap),
    publications: publications.map(edgeFromPublication),
    enquiries: enquiries.map(edgeFromEnquiry),
    pulls,
    originals,
  };
}

/** The book of a `book.json`; what an earlier export lacks is as it was then: nothing, and seen by everyone. */
export function bookFromJson(json: BookJson, pulls: ExportedBook['pulls']): ExportedBook {
  const { info, engines, packages, setUps, sessions, files } = json;
  return {
    info,
    engines,
    combinations: json.combinations.map(combinationFromEdge),
    packages,
    setUps,
    sessions,
    pulls,
    files,
    trials: json.trials.map((trial) => ({ ...trial, audience: trial.audience ?? OPEN_AUDIENCE })),
    cells: (json.cells ?? []).map(cellFromEdge),
    layouts: json.layouts ?? [],
    silenced: json.silenced ?? [],
    predictions: (json.predictions ?? []).map(predictionFromEdge),
    compressorMaps: (json.compressorMaps ?? []).map(mapFromEdge),
    publications: (json.publications ?? []).map(publicationFromEdge),
    enquiries: (json.enquiries ?? []).map(enquiryFromEdge),
    settings: json.settings ?? {},
    withdrawn: json.withdrawn ?? [],
    log: json.log.map((entry) => {
      const uid = entry.uid ?? `${info.id}/${entry.id}`;
      return { ...entry, uid, undoes: entry.undoes ?? null, together: entry.together ?? uid };
    }),
  };
}

function edgeFromCell({ altitude, momentOfInertia, ...rest }: Cell): EdgeCell {
  return { ...rest, altitudeM: altitude, momentOfInertiaKgM2: momentOfInertia };
}

function cellFromEdge({ altitudeM, momentOfInertiaKgM2, ...rest }: EdgeCell): Cell {
  return { ...rest, altitude: altitudeM, momentOfInertia: momentOfInertiaKgM2 };
}
