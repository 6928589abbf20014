using System.Text;
using MediatR;
using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Serilog.Core;

namespace Pipeline.Tests.Units.Engine;

public sealed class RequestsTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("requests").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_mistake_of_ours_becomes_one_answer_and_a_report()
    {
        var engine = Engine(() => throw new InvalidOperationException("a hole\nin the hull"));

        var broke = (await engine.Send(Check("batch: Buoy"))).Should().BeOfType<Answer<Checked>.Broke>().Which;

        broke.What.Should().Be("a hole in the hull (InvalidOperationException)");
        Path.GetFileName(broke.Report).Should().Be("breakdown-20261130T170000.0000000Z.txt");
        File.ReadAllText(broke.Report!).Should().Contain("CheckFiles").And.Contain("a hole").And.Contain("   at ");
    }

    [Fact]
    public async Task Bytes_that_are_no_text_are_refused_with_their_place()
    {
        var answer = await Engine().Send(new CheckFiles([new WorkflowInput.FromStream("x.yaml", new MemoryStream([(byte)'a', (byte)'\n', 0]))]));

        answer.Should().BeOfType<Answer<Checked>.Refused>().Which.Why.Should().ContainSingle().Which.Message.Should().StartWith("x.yaml:2:1: ");
    }

    [Fact]
    public async Task A_stream_that_breaks_is_refused()
    {
        var answer = await Engine().Send(new CheckFiles([new WorkflowInput.FromStream("x.yaml", new Broken())]));

        answer.Should().BeOfType<Answer<Checked>.Refused>().Which.Why[0].Message.Should().Be("cannot read x.yaml: torn (IOException)");
    }

    [Fact]
    public async Task A_name_nothing_goes_by_is_refused_with_the_nearest()
    {
        var answer = await Engine().Send(new ShowRule("step-out-of-trn"));

        answer.Should().BeOfType<Answer<string>.Refused>().Which.Why[0].Hint.Should().StartWith("Did you mean step-out-of-turn?");
    }

    [Theory]
    [InlineData("masktoo", "Did you mean mask-too-soon?")]
    [InlineData("MaskTooSoon", "Did you mean mask-too-soon?")]
    [InlineData("overspray", "Did you mean overspray-on-finished?")]
    [InlineData("mask-on", "Did you mean mask-on-too-long?")]
    [InlineData("recoattosoon", "Did you mean recoat-too-soon?")]
    [InlineData("decal", "Did you mean decal-not-sealed, decal-still-soft or decal-too-soon?")]
    [InlineData("ma", "pipeline rules lists them all.")]
    [InlineData("quinquereme", "pipeline rules lists them all.")]
    public async Task A_rule_named_in_part_is_refused_with_those_that_may_be_meant(string name, string hint)
    {
        var answer = await Engine(() => (Pipeline.Tests.Units.Check.Trade, default(Sequence<Finding>))).Send(new ShowRule(name));

        answer.Should().BeOfType<Answer<string>.Refused>().Which.Why[0].Hint.Should().StartWith(hint);
    }

    [Theory]
    [InlineData("2026-11-30 18:05", "2026-11-30T18:05:00")]
    [InlineData("2026-11-30T18:05", "2026-11-30T18:05:00")]
    [InlineData("2026-11-30T18:05:30", "2026-11-30T18:05:30")]
    [InlineData(" 2026-11-30 ", "2026-11-30T00:00:00")]
    [InlineData("2026-02-30", null)]
    [InlineData("30.11.2026", null)]
    [InlineData("tomorrow", null)]
    [InlineData("", null)]
    [InlineData("2026-11-30 24:00", "2026-12-01T00:00:00")]
    [InlineData("2026-11-30 25:00", null)]
    [InlineData("9999-12-31", null)]
    public void A_start_is_a_date_with_or_without_a_time(string text, string? read) =>
        StartText.Parse(text)?.ToString("uuuu-MM-dd'T'HH:mm:ss", null).Should().Be(read);

    [Theory]
    [InlineData("2020-01-01 19:00", 2524)]
    [InlineData("2026-11-28 18:00", 1)]
    [InlineData("2026-11-29 18:00", 0)]
    [InlineData("2026-12-24 18:00", 0)]
    public async Task A_plan_knows_how_long_before_now_it_begins(string from, int days)
    {
        // now is Monday 30 November 2026, 17:00 in Lisbon
        const string text = """
            batch: Buoy
            bench: { zone: Europe/Lisbon, sittings: [{ days: mon-sun, from: 19:00, to: 22:00 }] }
            kits:
              - kit: Buoy
                models:
                  - { model: Buoy, material: resin, areas: { all over: 5 cm² }, route: [{ trim: all }] }
            """;
        var answer = await Engine(() => (Pipeline.Tests.Units.Check.Trade, default(Sequence<Finding>)))
            .Send(new PlanFiles(Check(text).Inputs, StartText.Parse(from), Effort: Pipeline.Planning.SearchEffort.Quick));

        answer.Should().BeOfType<Answer<PlanResult>.Given>().Which.Value.Should().BeOfType<PlanResult.Planned>().Which.Plan.DaysPast.Should().Be(days);
    }

    private static CheckFiles Check(string text) => new([new WorkflowInput.FromStream("x.yaml", new MemoryStream(Encoding.UTF8.GetBytes(text)))]);

    private IMediator Engine(Func<(Pipeline.Workflows.Trade, Sequence<Finding>)>? plugins = null)
    {
        var clock = new StillClock(Instant.FromUtc(2026, 11, 30, 17, 0));
        var disk = new RealDisk();
        return Composition.Engine(new EngineParts(
            disk, clock, Logger.None, new PluginShelf(plugins ?? (() => (new Pipeline.Workflows.Trade(), []))), new BreakdownReports(disk, clock, folder)));
    }

    private sealed class Broken : MemoryStream
    {
        public override bool CanSeek => false;

        public override int Read(byte[] buffer, int offset, int count) => throw new IOException("torn");
    }
}
