// Writes dist/lib/index.d.cts: the types that `require('cogweave')` has. The code itself is the same ES module for
// both, so that there is one `Refusal` class only; but TypeScript before module `node20` lets a CommonJS file see
// an ES module's types through `import()` types alone, one name at a time.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const path = fileURLToPath(new URL('../dist/lib/index.d.ts', import.meta.url));
const program = ts.createProgram([path], {
  module: ts.ModuleKind.NodeNext,
  target: ts.ScriptTarget.ES2022,
  skipLibCheck: true,
});
const checker = program.getTypeChecker();
const whole = `import('./index.js', { with: { 'resolution-mode': 'import' } })`;

/** A type's parameters as they are declared, and as they are passed on. */
function parametersOf(symbol) {
  const list = symbol.declarations?.find(({ typeParameters }) => typeParameters)?.typeParameters ?? [];
  if (list.length === 0) return ['', ''];
  const names = list.map(({ name }) => name.text);
  return [`<${list.map((one) => one.getText()).join(', ')}>`, `<${names.join(', ')}>`];
}

const lines = checker
  .getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(path)))
  .flatMap((exported) => {
    const { name } = exported;
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    const [declared, passed] = parametersOf(symbol);
    return [
      ...(symbol.flags & ts.SymbolFlags.Value
        ? [`export declare const ${name}: typeof ${whole}.${name};`]
        : []),
      ...(symbol.flags & ts.SymbolFlags.Type
        ? [`export type ${name}${declared} = ${whole}.${name}${passed};`]
        : []),
    ];
  });
writeFileSync(path.replace(/\.d\.ts$/, '.d.cts'), `${lines.join('\n')}\n`);
