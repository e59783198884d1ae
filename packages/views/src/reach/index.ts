export * from '../reach-model.ts';
export { answerCard, type CardShows } from './answer-card.ts';
export { enquiryCard } from './enquiry-card.ts';
export { CHANGE_LABELS, partsPage } from './parts-page.ts';
export { REACH_CAUTIONS, reachPage } from './reach-page.ts';
export { revivedReach } from './revived-reach.ts';
