import { documentSubject, type SubjectName, subjectName } from '../core/model/evidence.js';
import { tableLines } from './table.js';

/** Each subject in a few words, as it is asked about on a terminal. */
const SUBJECTS: Readonly<Record<SubjectName, string>> = {
  'pulp-display': 'a thermometer in or on the product, with its figure',
  'unit-display': 'the display of the refrigeration unit',
  'trailer-inside': 'the empty trailer before loading: walls, floor, doors',
  drains: 'the drains of the floor',
  'air-chute': 'the chute that carries the air along the ceiling',
  'pallets-on-dock': 'the pallets as they stand on the dock',
  'load-pattern': 'how the pallets stand in the trailer',
  'air-path': 'the room for air around and above the load',
  bracing: 'what holds the load: bars, bags, straps',
  seal: 'a seal and its number',
  'load-at-opening': 'the load as the doors are opened at the receiver',
  damage: 'what is said to be wrong with the goods',
  'fuel-gauge': "the gauge of the unit's own tank",
  'thermometer-in-ice': 'a thermometer checked in ice water',
  'pallet-tag': 'the tag or label of a pallet',
  'recorder-in-load': 'a portable temperature recorder in its place in the load',
  'fresh-air-vent': 'the fresh-air vent and its setting',
  'equipment-plate': 'the plate of the trailer or unit with its class and date',
  'other-scene': 'anything else that was photographed',
  'bill-of-lading': 'the bill of lading',
  'proof-of-delivery': "the receiver's receipt for the goods",
  'inspection-certificate': "an inspector's or surveyor's report",
  'washout-receipt': 'the receipt for washing out the trailer',
  'scale-ticket': 'the ticket of a scale',
  'thermometer-check': 'a record that a thermometer was checked',
  'pre-trip-report': 'the check of the unit before the trip',
  'shipper-pulp-sheet': "the shipper's own sheet of pulp temperatures",
  'tally-sheet': 'a tally of count and condition',
  'rejection-notice': 'the notice that the goods are refused',
  'claim-letter': 'the letter that claims for loss or damage',
  'claim-acknowledgement': 'the answer that a claim was received',
  'claim-answer': 'a payment, offer or declination of a claim',
  invoice: 'an invoice for the goods or the freight',
  'sale-account': 'the account of what became of the goods: sold, given, dumped',
  'consignment-note': 'the consignment note of a carriage between countries (CMR)',
  'native-download': "the unit's download as its own program writes it",
  'recorder-download': 'the download of a portable temperature recorder',
  'calibration-certificate': 'the certificate of a calibration',
  'service-record': 'a record of the service of the unit or trailer',
  'harvest-record': 'a record of harvest and cooling',
  'origin-certificate': 'the certificate of an inspection at origin',
  'equipment-certificate': 'the certificate of insulated equipment (ATP)',
  'disposal-instruction': 'what somebody orders to be done with refused goods',
  'market-report': 'a market report with prices of the day',
  'proof-of-payment': 'proof that the goods were paid for',
  'title-document': 'a document that shows whose the goods are',
  'duty-record': "the record of the driver's hours and stops",
  'customs-document': 'a customs entry or declaration',
  'phytosanitary-certificate': 'a phytosanitary certificate',
  message: 'a message or e-mail',
  'other-paper': 'any other document',
};

/** What a photo can show, or a document be, numbered, each with its meaning, within a width. */
export function subjectChoices(of: 'photo' | 'document', width: number): string[] {
  const names = of === 'photo' ? subjectName.options : documentSubject.options;
  return tableLines(
    names.map((name, i) => [`    ${i + 1}`, name, SUBJECTS[name]]),
    width,
  );
}

/** A subject with its meaning: `seal: a seal and its number`. */
export const subjectMeaning = (name: SubjectName): string => `${name}: ${SUBJECTS[name]}`;
