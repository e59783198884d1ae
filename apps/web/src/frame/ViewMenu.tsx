import { useId } from 'react';
import { Dialog, DialogTrigger } from 'react-aria-components/Dialog';
import { Popover } from 'react-aria-components/Popover';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Field.tsx';
import { chooseView, useViewChoices, type ViewChoices } from '../view/view-choices.ts';
import styles from './frame.module.css';

function OneOf<Name extends 'theme' | 'units' | 'decimalMark'>({
  name,
  title,
  options,
}: {
  name: Name;
  title: string;
  options: { value: ViewChoices[Name]; text: string }[];
}) {
  const chosen = useViewChoices()[name];
  const group = useId();
  return (
    <fieldset>
      <legend>{title}</legend>
      <div className={styles.choices}>
        {options.map(({ value, text }) => (
          <Choice
            key={value}
            kind="radio"
            name={group}
            checked={chosen === value}
            onChange={() => chooseView({ [name]: value })}
          >
            {text}
          </Choice>
        ))}
      </div>
    </fieldset>
  );
}

/** How things are shown, remembered on this machine. */
export function ViewMenu() {
  return (
    <DialogTrigger>
      <Button look="quiet" small>
        View
      </Button>
      <Popover className={styles.popover ?? ''} placement="bottom end">
        <Dialog className={styles.menu ?? ''} aria-label="View">
          <OneOf
            name="theme"
            title="Theme"
            options={[
              { value: 'system', text: 'As the machine' },
              { value: 'light', text: 'Light' },
              { value: 'dark', text: 'Dark' },
            ]}
          />
          <OneOf
            name="units"
            title="Units"
            options={[
              { value: 'us', text: 'US: hp, lb-ft, psi, °F' },
              { value: 'si', text: 'SI: kW, N·m, kPa, °C' },
            ]}
          />
          <OneOf
            name="decimalMark"
            title="Decimal mark"
            options={[
              { value: '.', text: 'Point: 1.5' },
              { value: ',', text: 'Comma: 1,5' },
            ]}
          />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
