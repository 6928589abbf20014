using Pipeline.Cli;

return await CommandLine.Run(args).ConfigureAwait(false);
