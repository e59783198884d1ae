import { Dialog, DialogTrigger } from 'react-aria-components/Dialog';
import { Popover } from 'react-aria-components/Popover';
import { Button } from '../parts/Button.tsx';
import { OneOf } from '../parts/OneOf.tsx';
import { chooseForShop } from '../view/use-shop-settings.ts';
import { chooseTheme, useMachineTheme, useViewChoices } from '../view/view-choices.ts';
import styles from './frame.module.css';

/** How things are shown: the theme of this machine; units and decimal mark of the shop. */
export function ViewMenu() {
  const { units, decimalMark } = useViewChoices();
  return (
    <DialogTrigger>
      <Button look="quiet" small>
        View
      </Button>
      <Popover className={styles.popover ?? ''} placement="bottom end">
        <Dialog className={styles.menu ?? ''} aria-label="View">
          <OneOf
            title="Theme, on this machine"
            chosen={useMachineTheme() ?? 'shop'}
            options={[
              { value: 'shop', text: 'As the shop' },
              { value: 'light', text: 'Light' },
              { value: 'dark', text: 'Dark' },
              { value: 'system', text: 'As the machine' },
            ]}
            onChoose={(theme) => chooseTheme(theme === 'shop' ? null : theme)}
          />
          <OneOf
            title="Units, for the shop"
            chosen={units}
            options={[
              { value: 'us', text: 'US: hp, lb-ft, psi, °F' },
              { value: 'si', text: 'SI: kW, N·m, kPa, °C' },
            ]}
            onChoose={(chosen) => chooseForShop({ units: chosen })}
          />
          <OneOf
            title="Decimal mark, for the shop"
            chosen={decimalMark}
            options={[
              { value: '.', text: 'Point: 1.5' },
              { value: ',', text: 'Comma: 1,5' },
            ]}
            onChoose={(chosen) => chooseForShop({ decimalMark: chosen })}
          />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
