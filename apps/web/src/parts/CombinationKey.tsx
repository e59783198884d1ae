import { PALETTE } from '@pullbook/charts';
import { useTheme } from '../view/theme.ts';

/** A text in its combination's colour; in ink where it is no combination's. The letter beside it says the same. */
export function CombinationKey({ text, combination }: { text: string; combination: number | null }) {
  const theme = useTheme();
  const look = combination === null ? undefined : PALETTE[combination % PALETTE.length];
  return <span style={look === undefined ? undefined : { color: look[theme] }}>{text}</span>;
}
