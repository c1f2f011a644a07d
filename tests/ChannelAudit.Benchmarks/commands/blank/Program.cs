new ScottPlot.Plot().SavePng(args[0], 1600, 900);
