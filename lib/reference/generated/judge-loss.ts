// Generated from reference-data/judge-loss.json by tools/generate-reference.mjs. Do not edit.
/** Loss when one action is done and another was right */
export interface JudgeLossRow {
  /** Action done [text] */
  readonly done: string;
  /** Action that was right [text] */
  readonly right: string;
  /** Loss in whole currency units, invented figures of the right order [money] */
  readonly loss: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const judgeLoss: readonly JudgeLossRow[] = [
  {"done":"keep","right":"keep","loss":0,"source":"invented"},
  {"done":"keep","right":"fitEol","loss":140,"source":"invented"},
  {"done":"keep","right":"changeEol","loss":90,"source":"invented"},
  {"done":"keep","right":"repair","loss":220,"source":"invented"},
  {"done":"keep","right":"landAsNormallyOpen","loss":160,"source":"invented"},
  {"done":"keep","right":"powerAndRetest","loss":90,"source":"invented"},
  {"done":"keep","right":"leaveAlone","loss":3000,"source":"invented"},
  {"done":"keep","right":"measureAgain","loss":150,"source":"invented"},
  {"done":"fitEol","right":"keep","loss":30,"source":"invented"},
  {"done":"fitEol","right":"fitEol","loss":0,"source":"invented"},
  {"done":"fitEol","right":"changeEol","loss":40,"source":"invented"},
  {"done":"fitEol","right":"repair","loss":220,"source":"invented"},
  {"done":"fitEol","right":"landAsNormallyOpen","loss":120,"source":"invented"},
  {"done":"fitEol","right":"powerAndRetest","loss":90,"source":"invented"},
  {"done":"fitEol","right":"leaveAlone","loss":3000,"source":"invented"},
  {"done":"fitEol","right":"measureAgain","loss":150,"source":"invented"},
  {"done":"changeEol","right":"keep","loss":20,"source":"invented"},
  {"done":"changeEol","right":"fitEol","loss":40,"source":"invented"},
  {"done":"changeEol","right":"changeEol","loss":0,"source":"invented"},
  {"done":"changeEol","right":"repair","loss":200,"source":"invented"},
  {"done":"changeEol","right":"landAsNormallyOpen","loss":120,"source":"invented"},
  {"done":"changeEol","right":"powerAndRetest","loss":90,"source":"invented"},
  {"done":"changeEol","right":"leaveAlone","loss":3000,"source":"invented"},
  {"done":"changeEol","right":"measureAgain","loss":150,"source":"invented"},
  {"done":"repair","right":"keep","loss":110,"source":"invented"},
  {"done":"repair","right":"fitEol","loss":110,"source":"invented"},
  {"done":"repair","right":"changeEol","loss":100,"source":"invented"},
  {"done":"repair","right":"repair","loss":0,"source":"invented"},
  {"done":"repair","right":"landAsNormallyOpen","loss":110,"source":"invented"},
  {"done":"repair","right":"powerAndRetest","loss":70,"source":"invented"},
  {"done":"repair","right":"leaveAlone","loss":3000,"source":"invented"},
  {"done":"repair","right":"measureAgain","loss":120,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"keep","loss":110,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"fitEol","loss":110,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"changeEol","loss":100,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"repair","loss":130,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"landAsNormallyOpen","loss":0,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"powerAndRetest","loss":90,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"leaveAlone","loss":3000,"source":"invented"},
  {"done":"landAsNormallyOpen","right":"measureAgain","loss":120,"source":"invented"},
  {"done":"powerAndRetest","right":"keep","loss":60,"source":"invented"},
  {"done":"powerAndRetest","right":"fitEol","loss":60,"source":"invented"},
  {"done":"powerAndRetest","right":"changeEol","loss":60,"source":"invented"},
  {"done":"powerAndRetest","right":"repair","loss":70,"source":"invented"},
  {"done":"powerAndRetest","right":"landAsNormallyOpen","loss":70,"source":"invented"},
  {"done":"powerAndRetest","right":"powerAndRetest","loss":0,"source":"invented"},
  {"done":"powerAndRetest","right":"leaveAlone","loss":3000,"source":"invented"},
  {"done":"powerAndRetest","right":"measureAgain","loss":60,"source":"invented"},
  {"done":"leaveAlone","right":"keep","loss":180,"source":"invented"},
  {"done":"leaveAlone","right":"fitEol","loss":180,"source":"invented"},
  {"done":"leaveAlone","right":"changeEol","loss":180,"source":"invented"},
  {"done":"leaveAlone","right":"repair","loss":120,"source":"invented"},
  {"done":"leaveAlone","right":"landAsNormallyOpen","loss":180,"source":"invented"},
  {"done":"leaveAlone","right":"powerAndRetest","loss":150,"source":"invented"},
  {"done":"leaveAlone","right":"leaveAlone","loss":0,"source":"invented"},
  {"done":"leaveAlone","right":"measureAgain","loss":120,"source":"invented"},
  {"done":"measureAgain","right":"keep","loss":45,"source":"invented"},
  {"done":"measureAgain","right":"fitEol","loss":45,"source":"invented"},
  {"done":"measureAgain","right":"changeEol","loss":45,"source":"invented"},
  {"done":"measureAgain","right":"repair","loss":40,"source":"invented"},
  {"done":"measureAgain","right":"landAsNormallyOpen","loss":45,"source":"invented"},
  {"done":"measureAgain","right":"powerAndRetest","loss":30,"source":"invented"},
  {"done":"measureAgain","right":"leaveAlone","loss":300,"source":"invented"},
  {"done":"measureAgain","right":"measureAgain","loss":0,"source":"invented"},
];

export const judgeLossSources: Readonly<Record<string, string>> = {
  "invented": "invented money, no source: replace by your own",
};
