import type { CellReport, InstrumentReport } from '@pullbook/workshop';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { cellsQuestion } from '../../api/shop.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { CalibrationDialog } from './CalibrationDialog.tsx';
import { CellDialog } from './CellDialog.tsx';
import { InstrumentDialog } from './InstrumentDialog.tsx';
import { InstrumentRow } from './InstrumentRow.tsx';
import styles from './shop.module.css';
import { TakeOutDialog } from './TakeOutDialog.tsx';

type Open =
  | { what: 'cell'; cell: CellReport | null; name: string }
  | { what: 'instrument'; cell: CellReport }
  | { what: 'calibration' | 'takeOut'; cell: CellReport; instrument: InstrumentReport };

/** The test cells with their instruments, and how these stand to their calibrations today. */
export function Cells() {
  const cells = useQuery(cellsQuestion(useViewChoices()));
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  return (
    <Card
      title="Cells"
      beside={
        <Button small look="quiet" onPress={() => setOpen({ what: 'cell', cell: null, name: '' })}>
          Describe a cell
        </Button>
      }
    >
      <Trouble of={cells.error} />
      {cells.data?.cells.length === 0 && (
        <p className={styles.soft}>
          None described yet. A cell’s altitude catches a barometer reduced to the sea; its calibrations stand
          beside every pull made in it.
        </p>
      )}
      {cells.data?.undescribed.map(({ name, pulls }) => (
        <p key={name} className={styles.undescribed}>
          <span>
            <strong>{name}</strong>: named in {pulls === 1 ? '1 pull' : `${pulls} pulls`}, not described yet.
          </span>
          <Button small onPress={() => setOpen({ what: 'cell', cell: null, name })}>
            Describe <span className="unseen">{name}</span>
          </Button>
        </p>
      ))}
      {cells.data?.cells.map((cell) => (
        <section key={cell.id} className={styles.cell} aria-label={cell.name}>
          <div className={styles.cellHead}>
            <h3>{cell.name}</h3>
            <Button small look="quiet" onPress={() => setOpen({ what: 'cell', cell, name: cell.name })}>
              Change <span className="unseen">{cell.name}</span>
            </Button>
          </div>
          <p className={styles.soft}>{factsOf(cell)}</p>
          {cell.notes !== '' && <p className={styles.soft}>{cell.notes}</p>}
          <ul className={styles.instruments}>
            {cell.instruments.map((instrument) => (
              <InstrumentRow
                key={instrument.id}
                instrument={instrument}
                onCalibrate={() => setOpen({ what: 'calibration', cell, instrument })}
                onTakeOut={() => setOpen({ what: 'takeOut', cell, instrument })}
              />
            ))}
          </ul>
          <Button small onPress={() => setOpen({ what: 'instrument', cell })}>
            Add an instrument <span className="unseen">to {cell.name}</span>
          </Button>
        </section>
      ))}
      {open?.what === 'cell' && <CellDialog cell={open.cell} name={open.name} onClose={close} />}
      {open?.what === 'instrument' && <InstrumentDialog cell={open.cell} onClose={close} />}
      {open?.what === 'calibration' && (
        <CalibrationDialog cell={open.cell} instrument={open.instrument} onClose={close} />
      )}
      {open?.what === 'takeOut' && (
        <TakeOutDialog cell={open.cell} instrument={open.instrument} onClose={close} />
      )}
    </Card>
  );
}

function factsOf({ brake, altitudeText, momentOfInertiaText, pulls }: CellReport): string {
  return [
    brake,
    altitudeText === '' ? 'altitude not noted' : altitudeText,
    momentOfInertiaText === '' ? '' : `brake and coupling ${momentOfInertiaText}`,
    pulls === 1 ? '1 pull' : `${pulls} pulls`,
  ]
    .filter((text) => text !== '')
    .join(' · ');
}
