import type { SettingsReport } from '@pullbook/workshop';
import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { queryClient } from '../api/query-client.ts';
import { sendSettings, settingsQuestion, showSettings } from '../api/shop.ts';
import { takeShopSettings, viewChoices } from './view-choices.ts';

/** Follows the settings of the book: another window or the command line may have changed them. */
export function useShopSettings(): void {
  const { data } = useQuery(settingsQuestion());
  useEffect(() => {
    if (data !== undefined) takeShopSettings(data);
  }, [data]);
}

/** How many changes were sent: what an earlier one answers is old by then. */
let sent = 0;

type Choice = Partial<Pick<SettingsReport, 'units' | 'decimalMark' | 'letterKeys'>>;

/** Shows by other units or another decimal mark at once, before the book has answered, and keeps them for the shop. */
export function chooseForShop(choice: Choice): void {
  const { units, decimalMark, letterKeys } = viewChoices();
  const show = (shown: Choice) => {
    takeShopSettings(shown);
    showSettings(shown);
  };
  // An answer still on its way tells of what stood before the choice.
  void queryClient.cancelQueries(settingsQuestion());
  show(choice);
  sent += 1;
  const own = sent;
  sendSettings(choice)
    .then((kept) => own === sent && queryClient.setQueryData(settingsQuestion().queryKey, kept))
    // Not kept: what stood before stands again, and the next request says what is wrong.
    .catch(() => own === sent && show({ units, decimalMark, letterKeys }));
}
