/** Lines that can be typed, each with what it does: the help of every command ends with its own. */
export const examples: Record<string, [line: string, does: string][]> = {
  '': [
    ['$0 make spinner.yaml --out out', 'a set to print, its drawing and its sheet'],
    ['$0 make --help', 'what a command takes'],
  ],
  make: [
    ['$0 make spinner.yaml --out out', 'everything'],
    ['$0 make spinner.yaml --out out --format 3mf --picture', '3MF only, and a shaded picture'],
    ['$0 make spinner.yaml --out out --profile my-printer.yaml --strict', 'for one printer, no check waived'],
  ],
  inspect: [
    ['$0 inspect spinner.yaml', 'what would be made, and every check'],
    ['$0 inspect spinner.yaml --json > sheet.json', 'the same for scripts'],
  ],
  batch: [
    ['$0 batch variants.yaml --out out', 'every variant, on all cores'],
    ['$0 batch variants.yaml --out out --shard 2/4', 'a quarter of them, the second'],
  ],
  plan: [
    ['$0 plan --outer 120 --planets 5 --ratio 4', 'sets for a space and a ratio'],
    ['$0 plan --outer 120 --by opening --write spinner.yaml --row 2', 'the second best as a file'],
  ],
  coupon: [
    ['$0 coupon spinner.yaml --out out', 'the set’s teeth at gaps from 0.10 to 0.40 mm'],
    ['$0 coupon spinner.yaml --out out --gaps 0.15,0.2,0.25', 'three gaps only'],
    ['$0 coupon --out out --log log.yaml', 'the gaps that a trial log most needs'],
  ],
  schema: [['$0 schema > cogweave.schema.json', 'for an editor that completes parameter files']],
  completion: [
    ['$0 completion >> ~/.bashrc', 'for bash'],
    ['$0 completion >> ~/.zshrc', 'for zsh'],
  ],
};
