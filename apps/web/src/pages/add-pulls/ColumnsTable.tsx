import type { ChannelMeaning } from '@pullbook/core/pull';
import type { ColumnMapping, ReadFileReport } from '../../api/edge.ts';
import styles from './add-pulls.module.css';

const LEFT_OUT = '';
const FIRST_VALUES = 4;

/** What each column of the file is: guessed, with why, for the person to confirm or change. */
export function ColumnsTable({
  report,
  mapping,
  onMapping,
  confirmedFor,
}: {
  report: ReadFileReport;
  mapping: ColumnMapping[];
  onMapping: (mapping: ColumnMapping[]) => void;
  /** File with which this kind was confirmed; `null`: the guesses stand. */
  confirmedFor: string | null;
}) {
  const change = (changed: ColumnMapping) =>
    onMapping(mapping.map((one) => (one.index === changed.index ? changed : one)));

  const whyOf = (column: ReadFileReport['columns'][number], chosen: ColumnMapping | undefined) => {
    const given = report.mapping.find((one) => one.index === column.index);
    if (confirmedFor !== null && isAlike(chosen, given)) return `Confirmed for ${confirmedFor}.`;
    return isAlike(chosen, column.guess) ? column.guess.why : 'You said so.';
  };

  return (
    <section className={styles.part} aria-label="Columns of the file">
      <h3>What the columns are</h3>
      <div className={styles.scroll}>
        <table className={styles.columns}>
          <thead className={styles.heads}>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">First values</th>
              <th scope="col">Is</th>
              <th scope="col">In</th>
              <th scope="col">Because</th>
            </tr>
          </thead>
          <tbody>
            {report.columns.map((column) => {
              const chosen = mapping.find((one) => one.index === column.index);
              const meaning = report.meanings.find((one) => one.id === chosen?.meaning);
              const units = meaning === undefined ? [] : unitsOffered(meaning.units, chosen!.unit);
              return (
                <tr key={column.index}>
                  <th scope="row">
                    {column.name}
                    {column.unitText !== '' && <span className={styles.values}> {column.unitText}</span>}
                  </th>
                  <td className={styles.values}>
                    {report.preview
                      .slice(0, FIRST_VALUES)
                      .map((row) => row[column.index] ?? '')
                      .join(', ')}
                    {column.missing > 0 && <div>{column.missing} missing</div>}
                  </td>
                  <td>
                    <select
                      aria-label={`What ${column.name} is`}
                      value={chosen?.meaning ?? LEFT_OUT}
                      onChange={(event) =>
                        change(
                          mapped(report, column.index, event.target.value, chosen?.unit ?? column.unitText),
                        )
                      }
                    >
                      <option value={LEFT_OUT}>Leave out</option>
                      {report.meanings.map(({ id, label }) => (
                        <option key={id} value={id}>
                          {label}
                        </option>
                      ))}
                    </select>
                  </td>
                  <td>
                    {units.length > 0 && (
                      <select
                        aria-label={`Unit of ${column.name}`}
                        value={chosen!.unit}
                        onChange={(event) => change({ ...chosen!, unit: event.target.value })}
                      >
                        {units.map((unit) => (
                          <option key={unit} value={unit}>
                            {unit === '' ? 'no unit' : unit}
                          </option>
                        ))}
                      </select>
                    )}
                  </td>
                  <td className={styles.why}>{whyOf(column, chosen)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

const isAlike = (
  one: Pick<ColumnMapping, 'meaning' | 'unit'> | undefined,
  other: Pick<ColumnMapping, 'meaning' | 'unit'> | undefined,
) => one?.meaning === other?.meaning && one?.unit === other?.unit;

/** The units of a meaning, with the one written in the file kept where the list spells it otherwise. */
function unitsOffered(units: string[], chosen: string): string[] {
  return units.includes(chosen) ? units : [chosen, ...units];
}

function mapped(report: ReadFileReport, index: number, meaningId: string, unit: string): ColumnMapping {
  if (meaningId === LEFT_OUT) return { index, meaning: null, unit };
  const units = report.meanings.find((one) => one.id === meaningId)?.units ?? [];
  return {
    index,
    meaning: meaningId as ChannelMeaning,
    unit: units.length === 0 || units.includes(unit) ? unit : units[0]!,
  };
}
