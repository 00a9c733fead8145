// A finished letter and the facts around it arrive; a FHIR R4 Bundle with the letter as a document and as a message leaves.
import { sha1 } from '@noble/hashes/legacy.js';
import { sha256 as hashOf } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Bundle, Communication, DocumentReference, Reference } from 'fhir/r4.js';
import { base64 } from '../render/base64.js';

export type LetterFacts = {
  /** The patient's id as the file has it; without one the Bundle names no subject. */
  readonly patientId: string | null;
  readonly title: string;
  /** Tag of the letter's first language. */
  readonly language: string;
  readonly clinic: string;
  /** ISO date of the letter. */
  readonly date: string;
  readonly checkedBy: string | null;
  readonly note: string;
  readonly version: string;
};

/**
 * The letter as a DocumentReference with the PDF inside, and a Communication that points to it. Nothing is said to
 * have been sent: the message stays in preparation, and the document is preliminary until a clinician is named.
 * Ids are made from the content: the same letter gives the same Bundle.
 * HL7 FHIR R4 (4.0.1): DocumentReference, Communication, Bundle; value sets document-reference-status,
 * composition-status, event-status, bundle-type.
 * @example fhirBundle(pdf, facts).entry?.length // 2
 */
export function fhirBundle(pdf: Uint8Array, facts: LetterFacts): Bundle {
  const { patientId, date, checkedBy, clinic, title, note } = facts;
  const made = `${date}T00:00:00Z`;
  const content = sha256(pdf);
  const documentId = uuidOf(`DocumentReference ${content} ${JSON.stringify(facts)}`);
  const communicationId = uuidOf(`Communication ${documentId}`);
  const subject: Reference | null =
    patientId === null ? null : { type: 'Patient', identifier: { value: patientId } };
  const sender: Reference = { type: 'Organization', display: clinic };
  const document: DocumentReference = {
    resourceType: 'DocumentReference',
    id: documentId,
    status: 'current',
    docStatus: checkedBy === null ? 'preliminary' : 'final',
    type: { text: 'Letter to the patient about iron blood results' },
    ...(subject === null ? {} : { subject }),
    date: made,
    author: [sender],
    ...(checkedBy === null
      ? {}
      : { authenticator: { type: 'Practitioner' as const, display: checkedBy } }),
    custodian: sender,
    description: title,
    content: [
      {
        attachment: {
          contentType: 'application/pdf',
          language: facts.language,
          data: base64(pdf),
          size: pdf.length,
          hash: base64(sha1(pdf)),
          title,
          creation: made,
        },
      },
    ],
  };
  const communication: Communication = {
    resourceType: 'Communication',
    id: communicationId,
    status: 'preparation',
    category: [{ text: 'Letter about results' }],
    ...(subject === null ? {} : { subject, recipient: [subject] }),
    sender,
    payload: [{ contentReference: { reference: urn(documentId), type: 'DocumentReference' } }],
    note: [{ authorString: `ironleaf ${facts.version}`, time: made, text: note }],
  };
  return {
    resourceType: 'Bundle',
    id: uuidOf(`Bundle ${documentId}`),
    type: 'collection',
    timestamp: made,
    entry: [
      { fullUrl: urn(documentId), resource: document },
      { fullUrl: urn(communicationId), resource: communication },
    ],
  };
}

function sha256(bytes: Uint8Array): string {
  return bytesToHex(hashOf(bytes));
}

function urn(id: string): string {
  return `urn:uuid:${id}`;
}

/** RFC 9562 section 5.8: version 8, its other bits from a hash of the content. */
function uuidOf(content: string): string {
  const hex = sha256(utf8ToBytes(content));
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `a${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join('-');
}
