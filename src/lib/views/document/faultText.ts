import { faultLine, type Fault } from '$lib/project/fault.ts';
import { plainText } from '$lib/project/sentence.ts';

/** A fault in a list of faults; of the document as a whole without a place, which would be none. */
export const faultText = (fault: Fault): string => (fault.pointer === '' ? plainText(fault.message) : faultLine(fault));
