namespace Pipeline.Tests.EndToEnd;

/// <summary>The workflow files of the repository do what they are there for.</summary>
public sealed class WorkflowFilesTests : IDisposable
{
    private readonly Bench bench = new();

    public static TheoryData<string> Whole => [.. Directory.GetFiles(Bench.Workflow(""), "*.yaml").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    public void Dispose() => bench.Dispose();

    [Theory]
    [MemberData(nameof(Whole))]
    public void A_demo_file_gives_no_finding(string file) => bench.Pipeline("check", Bench.Workflow(file)).Should().Be(new Ran(0, "", ""));

    [Theory]
    [MemberData(nameof(Whole))]
    public void A_demo_file_has_the_same_plan_each_time_and_meets_its_due_time(string file)
    {
        string[] call = ["plan", Bench.Workflow(file), "--from", Files.Monday, "--effort", "quick", "--as", "json"];

        var first = bench.Pipeline(call);
        var second = bench.Pipeline(call);

        first.ExitCode.Should().Be(0, first.Err);
        second.Should().Be(first);
    }

    [Fact]
    public void Files_that_belong_together_are_checked_and_planned_as_one()
    {
        var files = Directory.GetFiles(Bench.Workflow("together"), "*.yaml").Order(StringComparer.Ordinal).ToArray();

        bench.Pipeline(["check", .. files]).Should().Be(new Ran(0, "", ""));
        bench.Pipeline(["plan", .. files, "--from", Files.Monday, "--effort", "quick"]).ExitCode.Should().Be(0);
    }

    [Theory]
    [InlineData("broken", 1)]
    [InlineData("risky", 0)]
    public void A_broken_or_risky_file_gives_exactly_the_finding_marked_in_it(string folder, int exitCode)
    {
        var files = Directory.GetFiles(Bench.Workflow(folder), "*.yaml").Order(StringComparer.Ordinal).ToList();
        files.Should().NotBeEmpty();
        foreach (var file in files)
        {
            var marked = File.ReadAllLines(file)
                .Select((line, index) => (Line: index + 1, Mark: line.Split("# <- ") is [_, var mark] ? mark.Trim() : null))
                .Where(each => each.Mark is not null)
                .ToList();

            var ran = bench.Pipeline("check", "--as", "json", file);

            ran.ExitCode.Should().Be(exitCode, file);
            if (File.ReadLines(file).First().StartsWith("# Seen in its plan:", StringComparison.Ordinal))
            {
                ran.Out.Should().Contain("\"findings\": []", $"only its plan shows what is amiss in {Path.GetFileName(file)}");
                ran = bench.Pipeline("plan", "--as", "json", "--effort", "quick", "--from", Files.Monday, file);
                ran.ExitCode.Should().Be(exitCode, file);
            }

            var told = Told.Of(ran.Out).Select(finding => (finding.Line, Mark: finding.Rule ?? finding.Level));
            told.Should().Equal(marked.Select(each => (each.Line, each.Mark!)), $"{Path.GetFileName(file)} says so itself; it gave {ran.Out}");
        }
    }

    [Fact]
    public void Every_rule_has_a_file_that_shows_it()
    {
        var shown = new[] { "broken", "risky" }.SelectMany(folder => Directory.GetFiles(Bench.Workflow(folder), "*.yaml")).Select(Path.GetFileNameWithoutExtension);

        var rules = bench.Pipeline("rules").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' ')[0]);

        rules.Should().BeSubsetOf(shown);
    }
}
