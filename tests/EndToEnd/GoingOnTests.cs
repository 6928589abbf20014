namespace Pipeline.Tests.EndToEnd;

/// <summary>A plan on the wall of which part is done, and the rest of it.</summary>
public sealed class GoingOnTests : IDisposable
{
    private const string Monday = "2026-11-30 22:00";
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void What_is_left_is_planned_kept_compared_and_gone_on_with()
    {
        bench.File("crew.yaml", File.ReadAllText(Bench.Workflow("first.yaml")));
        bench.File("one.json", bench.Pipeline("plan", "crew.yaml", "--from", Files.Monday, "--as", "json").Out);

        var text = bench.Pipeline("plan", "crew.yaml", "--keep", "one.json", "--done", Monday).ShowsNoTrace();
        text.ExitCode.Should().Be(0, text.Err);
        text.Out.Should().Contain("Done until Mon 30 Nov 22:00: ").And.Contain(" as one.json had").And.NotContain("MON 30 NOV");
        text.Out.Split('\n').Should().OnlyContain(line => line.Length <= 80);
        bench.Pipeline("plan", "crew.yaml", "--keep", "one.json", "--done", Monday, "--as", "md").Out.Should().Contain("Done until Mon 30 Nov 22:00");

        bench.File("two.json", bench.Pipeline("plan", "crew.yaml", "--keep", "one.json", "--done", Monday, "--as", "json").Out);
        bench.Pipeline("compare", "one.json", "two.json").Out.Should().Contain("Nothing is different").And.Contain("Done until Mon 30 Nov 22:00");
        bench.Pipeline("plan", "crew.yaml", "--keep", "two.json", "--from", "2026-12-01 18:00").Out.Should().Contain("Done until Mon 30 Nov 22:00");

        var all = bench.Pipeline("plan", "crew.yaml", "--keep", "two.json", "--done", "2026-12-20 22:00").ShowsNoTrace();
        all.ExitCode.Should().Be(0, all.Err);
        all.Out.Should().Contain("Nothing is left for the hands to do.").And.Contain("as two.json had them.");
    }

    [Fact]
    public void Why_takes_the_same_options()
    {
        bench.File("buoy.yaml", Files.Buoy);
        bench.File("one.json", bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--as", "json").Out);

        var clean = bench.Pipeline("why", "buoy.yaml", "clean", "--keep", "one.json", "--done", Monday).ShowsNoTrace();
        clean.ExitCode.Should().Be(0, clean.Err);
        clean.Out.Should().Contain("When it was done\n  Mon 30 Nov").And.Contain("done: as the plan before had it.").And.NotContain("slack:");
        bench.Pipeline("why", "buoy.yaml", "--late", "--keep", "one.json", "--done", Monday).ShowsNoTrace().ExitCode.Should().Be(0);
        bench.Pipeline("why", "buoy.yaml", "clean", "--done", Monday).ShowsNoTrace().Err.Should().Contain("--done goes by a plan that has the work in it");
        bench.Pipeline("why", "buoy.yaml", "clean", "--keep", "gone.json", "--done", Monday).ShowsNoTrace().Err.Should().Contain("cannot read gone.json");
    }

    [Theory]
    [InlineData("2026-11-30 12:00", null, "nothing of one.json is done by Mon 30 Nov 2026 12:00: its first task ends Mon 30 Nov 2026 1")]
    [InlineData("2026-12-02 22:00", "2026-12-01 18:00", "work is done until Wed 2 Dec 2026 22:00, and a plan from Tue 1 Dec 2026 18:00 would begin before that")]
    [InlineData("2026-12-02T22:00Z", null, "--done does not understand '2026-12-02T22:00Z'")]
    [InlineData("yesterday", null, "--done does not understand 'yesterday'")]
    public void A_time_that_makes_no_sense_is_refused(string done, string? from, string said)
    {
        bench.File("buoy.yaml", Files.Buoy);
        bench.File("one.json", bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--as", "json").Out);

        var ran = bench.Pipeline(["plan", "buoy.yaml", "--keep", "one.json", "--done", done, .. from is null ? [] : new[] { "--from", from }]).ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().StartWith($"pipeline: {said}").And.Contain("    do: ");
    }

    [Fact]
    public void A_plan_that_knows_more_as_done_is_not_taken_back()
    {
        bench.File("buoy.yaml", Files.Buoy);
        bench.File("one.json", bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--as", "json").Out);
        bench.File("two.json", bench.Pipeline("plan", "buoy.yaml", "--keep", "one.json", "--done", Monday, "--as", "json").Out);

        bench.Pipeline("plan", "buoy.yaml", "--keep", "two.json", "--done", "2026-11-30 20:00").ShowsNoTrace().Err
            .Should().StartWith("pipeline: two.json takes work as done until Mon 30 Nov 2026 22:00, and Mon 30 Nov 2026 20:00 is before that");
        bench.Pipeline("plan", "buoy.yaml", "--keep", "two.json", "--from", "2026-11-30 20:00").ShowsNoTrace().Err
            .Should().StartWith("pipeline: work is done until Mon 30 Nov 2026 22:00, and a plan from Mon 30 Nov 2026 20:00 would begin before that");
    }

    [Fact]
    public void Work_inserted_before_what_is_done_has_no_plan()
    {
        bench.File("buoy.yaml", Files.Buoy);
        bench.File("one.json", bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--as", "json").Out);
        bench.File("buoy.yaml", Files.Buoy.Replace("- undercoat: all", "- post-cure: all\n          - undercoat: all"));

        var ran = bench.Pipeline("plan", "buoy.yaml", "--keep", "one.json", "--done", Monday).ShowsNoTrace();

        ran.ExitCode.Should().Be(3);
        ran.Err.Should().Contain("is new and stands before work already done").And.Contain("Move it behind what has been done");
    }
}
