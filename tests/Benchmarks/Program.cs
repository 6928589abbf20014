using Pipeline.Benchmarks.Command;
using Pipeline.Benchmarks.Scheduling;

return args switch
{
    ["batches", .. var rest] => BatchesBenchmark.Run(rest),
    ["instances", .. var rest] => InstancesBenchmark.Run(rest),
    ["startup"] => StartupBenchmark.Run(),
    ["check20k", .. var rest] => LargeFileBenchmark.Run(rest),
    ["opinions", .. var rest] => OpinionsBenchmark.Run(rest),
    ["growth", .. var rest] => GrowthBenchmark.Run(rest),
    ["storm", .. var rest] => StormBenchmark.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("benchmarks: batches [SIZE…] [--batch N] [--seed N] [--no-close-downs] [--quick|--thorough] [--baseline] | instances FOLDER [--set NAME, also setups] [--named BEGINNING,…] [--take N] [--effort E] | opinions [N] [--quick] | storm [N] [--from SEED] | growth [SIZE…] [--rack PLACES] [PLOT.svg] | startup | check20k [--check-only]");
    return 2;
}
