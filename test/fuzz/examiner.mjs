// A process that examines the files it is told, one after the other, for `fuzz.mjs`.
import Module from 'manifold-3d';
import { stringify } from 'yaml';
import { examine } from './examine.mjs';
import { parameterFile } from './parameterFile.mjs';

const kernel = await Module();
kernel.setup();

process.on('message', ({ seed, index, ...how }) => {
  const data = parameterFile(seed, index);
  const text = stringify(data);
  let result;
  try {
    result = examine(data, text, kernel, { ...how, turn: index });
  } catch (error) {
    result = { outcome: 'crashed', faults: [`examining threw ${error.stack}`] };
  }
  process.send(result);
});
process.send('ready');
