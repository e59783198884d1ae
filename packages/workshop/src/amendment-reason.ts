import { refused, remark } from '@pullbook/core/remark';

/** An amendment is logged with its reason; without one it is refused. */
export function amendmentWithoutReason() {
  return refused(
    remark(
      'refusal',
      'no-reason',
      'An amendment needs a reason: say what was entered wrong, or what became known.',
    ),
  );
}
