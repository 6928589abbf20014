namespace Pipeline.Tests.EndToEnd;

/// <summary>The same file gives the same plan, however busy the machine is and however many cores the command may use.</summary>
public sealed class DeterminismTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData("first.yaml")]
    [InlineData("tidewater.yaml")]
    public void Two_processes_under_load_give_the_same_plan_to_the_byte(string workflow)
    {
        // one on a single core beside a busy loop, one as it comes; both at once
        var ran = bench.Shell(
            $"""
            while :; do :; done &
            busy=$!
            trap 'kill $busy' EXIT
            DOTNET_PROCESSOR_COUNT=1 "$pipeline" plan "{Bench.Workflow(workflow)}" --from "{Files.Monday}" --effort quick --as json > one.json &
            one=$!
            "$pipeline" plan "{Bench.Workflow(workflow)}" --from "{Files.Monday}" --effort quick --as json > two.json &
            two=$!
            wait $one && wait $two
            """);

        ran.ShowsNoTrace().ExitCode.Should().Be(0, ran.Err);
        var first = File.ReadAllBytes(Path.Combine(bench.Folder, "one.json"));
        first.Should().NotBeEmpty();
        first.Should().Equal(File.ReadAllBytes(Path.Combine(bench.Folder, "two.json")));
    }
}
