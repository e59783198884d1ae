import { defaultRecipe, viewPull } from '@pullbook/core/pull';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Finding } from '@pullbook/core/rule';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type EdgeFinding, edgeFindings } from './edge/finding.ts';
import { findNamed } from './find-named.ts';
import { findingsAboutCombination, findingsAboutPull } from './findings.ts';
import { answerWithMatch } from './match/answer-with-match.ts';
import { matchOfCombination } from './match/match-bundle.ts';
import { settingsOf } from './settings.ts';
import { shopReadingOf } from './shop-reading.ts';

/** What the rules say of one thing. */
export interface CheckReport {
  kind: 'pull' | 'trial' | 'combination';
  id: string;
  name: string;
  findings: EdgeFinding[];
}

/** What the rules say of a pull with its session, of a trial with its pulls, or of a combination by its sheet and its match. */
export async function checkThing(
  book: Book,
  given: string,
  wordsIn: ViewOptions | null = null,
): Promise<Result<CheckReport>> {
  const found = await findNamed(book, ['trial', 'pull', 'combination'], given, 'thing');
  if (!found.ok) return found;
  const { kind, id, name } = found.value;
  const { findings, names } = await findingsOf(book, kind, id);
  return accepted({ kind, id, name, findings: edgeFindings(findings, wordsIn, names) });
}

/** With the names of what else than the thing itself is spoken of. */
async function findingsOf(
  book: Book,
  kind: CheckReport['kind'],
  id: string,
): Promise<{ findings: Finding[]; names: ReadonlyMap<string, string> }> {
  if (kind === 'trial') {
    const { findings, pulls } = await answerWithMatch(book, (await book.trial(id))!);
    return { findings, names: new Map([...pulls.values()].map((pull) => [`pull ${pull.id}`, pull.name])) };
  }
  if (kind === 'combination') {
    const bySheet = await findingsAboutCombination(book, (await book.combination(id))!);
    return { findings: [...bySheet, ...(await findingsByMatch(book, id))], names: new Map() };
  }
  const pull = (await book.pull(id))!;
  const view = viewPull(pull, defaultRecipe((await settingsOf(book)).correction), await shopReadingOf(book));
  const combination = pull.combinationId === null ? null : await book.combination(pull.combinationId);
  const findings = await findingsAboutPull(book, { pull, view, combination });
  return { findings, names: new Map([[`session ${pull.sessionId}`, 'The session']]) };
}

/** What a match says that no sheet can: how near the impeller comes to its limit at the engine's. None without a match. */
async function findingsByMatch(book: Book, id: string): Promise<Finding[]> {
  const match = await matchOfCombination(book, id);
  return match.ok ? match.value.combinations.flatMap(({ findings }) => findings) : [];
}
