/** What the server sends and takes besides the views' own types. Bare figures are shown as they come, never computed with. */
import type { Package, PartChange } from '@pullbook/core/combination';
import type { FindingGroup, ShownRemark } from '@pullbook/views';
import type {
  LikeReport,
  PullDetailsText,
  ReadFileReport,
  ImportReport as ReportOfImport,
} from '@pullbook/workshop';

export type {
  BookReport,
  CombinationRow,
  EngineRow,
  FieldWords,
  HistoryPage,
  HistoryStep,
  LikeReport,
  ListPage,
  PullDetailsText,
  PullListPage,
  ReadFileReport,
  SheetAtHand,
  SheetRemark,
  SheetWords,
  WeatherText,
} from '@pullbook/workshop';

export type PackageRow = Package;
export type SheetChange = PartChange;
export type WrittenFields = LikeReport['fields'];
export type ColumnMapping = ReadFileReport['mapping'][number];

/** The kind of a file, where one laid out alike was confirmed before. */
export type KnownLayoutReport = NonNullable<ReadFileReport['knownLayout']>;

/** What was said beside a kind of file and holds on; `null`: nothing. */
export type SaidText = KnownLayoutReport['said'];

/** What the figures of a file have in them. */
export type Carried = { standard: WrittenFields['standard']; factor: number | null };

type FormField = 'name' | 'combinationId' | 'setUp' | 'cell' | 'recordedAt' | 'weather' | 'carried';

/** What else is written down about a pull, text with units; missing: not said. */
export type MoreOfPull = Omit<PullDetailsText, FormField | 'treatment' | 'orderInSession'>;

/** What is sent beside a file. */
export interface ImportDetails extends PullDetailsText {
  mapping: ColumnMapping[];
}

export interface ImportReport {
  pulls: Pick<ReportOfImport['pulls'][number], 'id' | 'name'>[];
  findings: FindingGroup[];
  remarks: ShownRemark[];
  alreadyKnown: boolean;
}

/** A page with what a change made from it gives back, so that nobody's writing in between is lost. */
export type Stamped<Page> = Page & { stamp: string };
