using Pipeline.Cli;

return CommandLine.Run(args);
