import { Key } from './Button.tsx';

/** Keys as they are printed on a keyboard, one after the other; `shown` names them with spaces between. */
export function KeyNames({ shown }: { shown: string }) {
  return (
    <>
      {shown.split(' ').map((one) => (
        <Key key={one}>{one}</Key>
      ))}
      <span className="unseen">{shown}</span>
    </>
  );
}
