/**
 * What left the shop: a publication with its figures and the pulls they rest on, never altered but for its links. And how a
 * trial is told step by step, kept with the trial.
 */
export const publication = `
create table publication (
  sequence integer primary key autoincrement,
  id text not null unique,
  trialId text not null references trial (id),
  question text not null,
  sentence text not null,
  kinds text not null check (json_valid(kinds)),
  files text not null check (json_valid(files)),
  pullIds text not null check (json_valid(pullIds)),
  correction text not null,
  figures text not null check (json_valid(figures)),
  privateToo integer not null check (privateToo in (0, 1)),
  links text not null check (json_valid(links)),
  at text not null
) strict;
create index publicationOfTrial on publication (trialId);
create trigger publicationIsNotAltered before update of
  id, trialId, question, sentence, kinds, files, pullIds, correction, figures, privateToo, at on publication
begin select raise(abort, 'what was published is never altered'); end;
create trigger publicationIsNotDeleted before delete on publication
begin select raise(abort, 'what was published is never altered'); end;
alter table trial add column runningOrder text not null default 'null' check (json_valid(runningOrder));
`;
