using Pipeline.Benchmarks.Scheduling;

return args switch
{
    ["batches", .. var rest] => BatchesBenchmark.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("benchmarks: batches [SIZE…] [--quick|--thorough]");
    return 2;
}
