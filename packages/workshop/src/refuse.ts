import { refused, remark } from '@pullbook/core/remark';

/**
 * A refusal in one sentence.
 *
 * @example refuse('no-place', 'Say where it appeared: an address, or words.')
 */
export const refuse = (code: string, message: string) => refused(remark('refusal', code, message));
