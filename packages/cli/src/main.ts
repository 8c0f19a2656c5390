process.stdout.write('coreward\n');
