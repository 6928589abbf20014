namespace Pipeline.Tests.EndToEnd;

/// <summary>A plan that stays close to the one on the wall, and two plans compared.</summary>
public sealed class StabilityTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_kept_plan_says_what_moved_and_is_the_same_where_nothing_changed()
    {
        bench.File("crew.yaml", File.ReadAllText(Bench.Workflow("first.yaml")));
        bench.File("one.json", Plan("crew.yaml"));

        var kept = bench.Pipeline("plan", "crew.yaml", "--from", Files.Monday, "--keep", "one.json").ShowsNoTrace();

        kept.ExitCode.Should().Be(0, kept.Err);
        kept.Out.Should().Contain("Against the plan before: nothing is different");
        var json = bench.Pipeline("plan", "crew.yaml", "--from", Files.Monday, "--keep", "one.json", "--as", "json").Out;
        System.Text.Json.JsonDocument.Parse(json).RootElement.GetProperty("kept").GetProperty("moved").GetInt32().Should().Be(0);
    }

    [Fact]
    public void Two_plans_are_compared_in_every_form()
    {
        bench.File("buoy.yaml", Files.Buoy);
        bench.File("one.json", Plan("buoy.yaml"));
        bench.File("buoy.yaml", Files.Buoy.Replace("- trim: all", "- trim: all\n            minutes: 40 min"));
        bench.File("two.json", Plan("buoy.yaml"));

        var text = bench.Pipeline("compare", "one.json", "two.json").ShowsNoTrace();

        text.ExitCode.Should().Be(0, text.Err);
        text.Out.Should().StartWith("Buoy").And.Contain("WHAT IT COSTS OR SAVES").And.MatchRegex("hands at work .* more");
        text.Out.Split('\n').Should().OnlyContain(line => line.Length <= 80);
        bench.Pipeline("compare", "one.json", "two.json", "--as", "md").Out.Should().StartWith("# Buoy: two plans compared");
        System.Text.Json.JsonDocument.Parse(bench.Pipeline("compare", "one.json", "two.json", "--as", "json").Out).RootElement.GetProperty("kind").GetString().Should().Be("comparison");
        bench.Pipeline("compare", "one.json", "one.json").Out.Should().Contain("Nothing is different");
    }

    [Theory]
    [InlineData("missing.json", null, "cannot read missing.json: there is no such file")]
    [InlineData("cut.json", "{ \"kind\": \"plan\", \"version\": 1,", "cut.json is no JSON: it goes wrong on line")]
    [InlineData("other.json", "{ \"kind\": \"findings\", \"version\": 1 }", "other.json holds findings, not a plan")]
    [InlineData("newer.json", "{ \"kind\": \"plan\", \"version\": 7 }", "newer.json is a plan of version 7; this program reads version 1")]
    [InlineData("half.json", "{ \"kind\": \"plan\", \"version\": 1, \"batch\": \"Buoy\" }", "half.json is not a whole plan: 'zone' is missing")]
    [InlineData("list.json", "[1, 2]", "list.json is JSON, but no plan")]
    public void A_file_that_is_no_plan_is_refused_by_both(string name, string? text, string said)
    {
        bench.File("buoy.yaml", Files.Buoy);
        bench.File("one.json", Plan("buoy.yaml"));
        if (text is not null)
            bench.File(name, text);

        foreach (var ran in new[] { bench.Pipeline("plan", "buoy.yaml", "--keep", name, "--from", Files.Monday), bench.Pipeline("compare", "one.json", name), bench.Pipeline("compare", name, "one.json") })
        {
            ran.ShowsNoTrace().ExitCode.Should().Be(2);
            ran.Out.Should().BeEmpty();
            ran.Err.Should().StartWith($"pipeline: {said}").And.Contain("    do: ");
        }
    }

    [Fact]
    public void A_plan_of_another_batch_is_refused_by_both()
    {
        bench.File("buoy.yaml", Files.Buoy);
        bench.File("tow.yaml", Files.Buoy.Replace("batch: Buoy", "batch: Tow"));
        bench.File("buoy.json", Plan("buoy.yaml"));
        bench.File("tow.json", Plan("tow.yaml"));

        var kept = bench.Pipeline("plan", "tow.yaml", "--keep", "buoy.json", "--from", Files.Monday).ShowsNoTrace();
        var compared = bench.Pipeline("compare", "buoy.json", "tow.json").ShowsNoTrace();

        (kept.ExitCode, compared.ExitCode).Should().Be((2, 2));
        kept.Err.Should().Contain("buoy.json is a plan of 'Buoy', and this is 'Tow'");
        compared.Err.Should().Contain("buoy.json is a plan of 'Buoy' and tow.json one of 'Tow'");
    }

    private string Plan(string file) => bench.Pipeline("plan", file, "--from", Files.Monday, "--as", "json").Out;
}
