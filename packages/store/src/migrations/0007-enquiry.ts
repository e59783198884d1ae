/** A target asked of a combination with the answer that was given, never altered but for what became of its rungs and the cards that left. */
export const enquiry = `
create table enquiry (
  sequence integer primary key autoincrement,
  id text not null unique,
  question text not null,
  combinationId text not null references combination (id),
  asked text not null check (json_valid(asked)),
  answer text not null check (json_valid(answer)),
  pullIds text not null check (json_valid(pullIds)),
  madeBy text not null check (json_valid(madeBy)),
  became text not null check (json_valid(became)),
  cards text not null check (json_valid(cards)),
  at text not null
) strict;
create index enquiryOfCombination on enquiry (combinationId);
create trigger enquiryIsNotAltered before update of
  id, question, combinationId, asked, answer, pullIds, madeBy, at on enquiry
begin select raise(abort, 'an answer that was given is never altered'); end;
create trigger enquiryIsNotDeleted before delete on enquiry
begin select raise(abort, 'an answer that was given is never altered'); end;
`;
