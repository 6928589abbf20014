using Pipeline.Benchmarks.Scheduling;

return args switch
{
    ["batches", .. var rest] => BatchesBenchmark.Run(rest),
    ["instances", .. var rest] => InstancesBenchmark.Run(rest),
    ["storm", .. var rest] => StormBenchmark.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("benchmarks: batches [SIZE…] [--quick|--thorough] | instances FOLDER [--set NAME] [--take N] [--effort E] | storm [N]");
    return 2;
}
