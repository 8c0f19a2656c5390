import { connectorNames } from '@coreward/optics';
import { word } from '../document/form-builders.ts';

/** The connectors of the trade, or `none`. Without a suffix FC, SC and LC are flat. */
export const connectorForm = word([...connectorNames, 'none'], {
  FC: 'FC/PC',
  'FC/UPC': 'FC/PC',
  'SC/PC': 'SC',
  'SC/UPC': 'SC',
  'LC/PC': 'LC',
  'LC/UPC': 'LC',
  'ST/PC': 'ST',
  SMA905: 'SMA',
  'SMA 905': 'SMA',
});
