import { useEffect, useRef, useState } from 'react';
import type { SheetChange, SheetRemark, SheetWords } from '../../api/edge.ts';
import { Button } from '../../parts/Button.tsx';
import { TextField } from '../../parts/Field.tsx';
import { AddChoice } from './AddChoice.tsx';
import { SheetLineFields } from './SheetLineFields.tsx';
import styles from './sheet-editor.module.css';
import {
  fieldsLeft,
  newLine,
  nextField,
  type SheetBlock,
  type SheetLine,
  type SheetLines,
  withBlock,
  withOriginOfItsValue,
} from './sheet-lines.ts';

const OWN_LINE = 'own';

/** A sheet as headed blocks, one line a field. Enter leads to the next line and adds one at the end of a block. */
export function SheetByLines({
  lines,
  first,
  words,
  remarks,
  changes,
  onLines,
}: {
  lines: SheetLines;
  /** The sheet of the other hardware that this one is made from; `null`: none. */
  first: SheetLines | null;
  words: SheetWords;
  remarks: SheetRemark[];
  changes: SheetChange[];
  onLines: (lines: SheetLines) => void;
}) {
  const root = useRef<HTMLDivElement>(null);
  const [wanted, setWanted] = useState<string | null>(null);

  useEffect(() => {
    if (wanted === null) return;
    const field = [...(root.current?.querySelectorAll<HTMLElement>('[data-place]') ?? [])];
    field.find((one) => one.dataset.place === wanted)?.focus();
    setWanted(null);
  }, [wanted]);

  function addLine(block: SheetBlock, field: string) {
    onLines(withBlock(lines, block.section, [...block.lines, newLine(words, block.section, field)]));
    setWanted(`${block.section}.${field}`);
  }

  function goOn(block: SheetBlock, index: number) {
    const next = block.lines[index + 1];
    const added = next?.field ?? nextField(words, block, block.lines[index]!.field);
    if (added === null) setWanted(`${block.section} add`);
    else if (next === undefined) addLine(block, added);
    else setWanted(`${block.section}.${next.field}`);
  }

  function removeLine(block: SheetBlock, index: number) {
    const rest = block.lines.filter((_, at) => at !== index);
    onLines(withBlock(lines, block.section, rest));
    const neighbour = rest[Math.min(index, rest.length - 1)];
    setWanted(neighbour ? `${block.section}.${neighbour.field}` : `${block.section} add`);
  }

  function changeLine(block: SheetBlock, index: number, line: SheetLine) {
    const ofFirst = first?.blocks.find(({ section }) => section === block.section)?.lines;
    const before = block.lines[index]!;
    const edited = withOriginOfItsValue(
      line,
      before,
      ofFirst?.find(({ field }) => field === line.field),
    );
    onLines(withBlock(lines, block.section, block.lines.with(index, edited)));
  }

  const sectionsLeft = words.sections.filter(({ id }) => !lines.blocks.some(({ section }) => section === id));

  return (
    <div className={styles.blocks} ref={root}>
      <TextField
        label="Name of the combination"
        required
        value={lines.name}
        onChange={(event) => onLines({ ...lines, name: event.target.value })}
      />
      {lines.blocks.map((block) => {
        const title = words.sections.find(({ id }) => id === block.section)?.title ?? block.section;
        return (
          <section key={block.section} className={styles.block} aria-label={title}>
            <div className={styles.blockHead}>
              <h2>{title}</h2>
              <Button
                look="quiet"
                small
                aria-label={`Take off the whole section ${title}`}
                onPress={() => {
                  onLines({ ...lines, blocks: lines.blocks.filter((one) => one !== block) });
                  setWanted('add section');
                }}
              >
                Take off
              </Button>
            </div>
            {block.lines.map((line, index) => (
              <SheetLineFields
                key={line.field}
                section={block.section}
                line={line}
                words={words}
                remarks={remarks}
                change={changes.find((one) => one.section === block.section && one.field === line.field)}
                onLine={(changed) => changeLine(block, index, changed)}
                onEnter={() => goOn(block, index)}
                onRemove={() => removeLine(block, index)}
              />
            ))}
            {changes
              .filter((one) => one.section === block.section && one.after === null)
              .map((one) => (
                <p key={one.field} className={styles.gone}>
                  Taken off: {one.label}, was {one.before}
                </p>
              ))}
            <AddChoice
              label={`A line more under ${title}`}
              act="Add the line"
              place={`${block.section} add`}
              options={[
                ...fieldsLeft(words, block).map(({ field, label }) => ({ value: field, text: label })),
                { value: OWN_LINE, text: 'A line of its own …' },
              ]}
              own={{ value: OWN_LINE, label: 'What the line is called' }}
              taken={block.lines.map(({ field }) => field)}
              onAdd={(field) => addLine(block, field)}
            />
          </section>
        );
      })}
      {sectionsLeft.length > 0 && (
        <AddChoice
          label="A section more"
          act="Add the section"
          place="add section"
          options={sectionsLeft.map(({ id, title }) => ({ value: id, text: title }))}
          taken={[]}
          onAdd={(section) => {
            const first = words.sections.find(({ id }) => id === section)!.fields[0]!.field;
            const block = { section, lines: [newLine(words, section, first)] };
            onLines({ ...lines, blocks: [...lines.blocks, block] });
            setWanted(`${section}.${first}`);
          }}
        />
      )}
    </div>
  );
}
