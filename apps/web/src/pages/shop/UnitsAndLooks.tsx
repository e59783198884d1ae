import type { SettingsReport } from '@pullbook/workshop';
import { useKeepSettings } from '../../api/shop.ts';
import { Card } from '../../parts/Card.tsx';
import { Choice } from '../../parts/Field.tsx';
import { OneOf } from '../../parts/OneOf.tsx';
import { Kept } from './Kept.tsx';
import styles from './shop.module.css';

export function UnitsAndLooks({ settings }: { settings: SettingsReport }) {
  const keep = useKeepSettings();
  return (
    <Card title="Units and looks">
      <div className={styles.form}>
        <OneOf
          title="Units"
          chosen={settings.units}
          options={[
            { value: 'us', text: 'US: hp, lb-ft, psi, °F' },
            { value: 'si', text: 'SI: kW, N·m, kPa, °C' },
          ]}
          onChoose={(units) => keep.mutate({ units })}
        />
        <OneOf
          title="Decimal mark"
          chosen={settings.decimalMark}
          options={[
            { value: '.', text: 'Point: 1.5' },
            { value: ',', text: 'Comma: 1,5' },
          ]}
          onChoose={(decimalMark) => keep.mutate({ decimalMark })}
        />
        <OneOf
          title="Theme, unless a machine chose its own under View"
          chosen={settings.theme}
          options={[
            { value: 'system', text: 'As the machine' },
            { value: 'light', text: 'Light' },
            { value: 'dark', text: 'Dark' },
          ]}
          onChoose={(theme) => keep.mutate({ theme })}
        />
        <Choice
          kind="checkbox"
          checked={settings.letterKeys}
          onChange={(event) => keep.mutate({ letterKeys: event.target.checked })}
          help="T, I, 1 and the others shown under Keys."
        >
          Single-letter keys
        </Choice>
        <Kept act={keep} />
      </div>
    </Card>
  );
}
