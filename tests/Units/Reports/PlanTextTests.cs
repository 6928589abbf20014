using System.Globalization;
using CsCheck;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Reports;
using Spectre.Console;
using static Pipeline.Tests.Units.Reports.Harbour;
using TextStyle = Pipeline.Reports.TextStyle;

namespace Pipeline.Tests.Units.Reports;

public sealed class PlanTextTests
{
    private static readonly TextStyle Drawing = new() { Colour = true, Drawn = true };

    [Fact]
    public void Two_weeks_at_eighty_columns() =>
        Golden.Of("tests/Units/Reports/golden/two-weeks.txt").ShouldBe(PlanText.Render(TwoWeeks.Plan, TextStyle.Plain));

    [Fact]
    public void Two_weeks_on_a_terminal_that_draws() =>
        Golden.Of("tests/Units/Reports/golden/two-weeks.terminal.txt")
            .ShouldBe(PlanText.Render(TwoWeeks.Plan, Drawing).Replace("\u001b", "␛", StringComparison.Ordinal));

    [Fact]
    public void Two_painters_have_their_own_rows_and_sittings() =>
        Golden.Of("tests/Units/Reports/golden/two-painters.txt").ShouldBe(PlanText.Render(TwoPainters.Plan, TextStyle.Plain));

    [Fact]
    public void An_empty_plan_is_a_short_page()
    {
        var text = PlanText.Render(Empty, TextStyle.Plain);
        text.Should().StartWith("Tidewater salvage crew").And.Contain("Nothing is to be done.").And.NotContainAny("FINISHED", "MASKS", "Before leaving");
        text.Should().NotContain("WHY IT IS NOT SHORTER");
    }

    [Fact]
    public void What_is_told_at_a_task_is_not_told_again()
    {
        var text = PlanText.Render(TwoWeeks.Plan, TextStyle.Plain);
        Occurrences(text, "is 19 h old when tape goes on").Should().Be(1);
        Occurrences(text, "Spray with extraction to the outside").Should().Be(1);
        Occurrences(text, "nobody has confirmed these").Should().Be(1);
    }

    [Theory]
    [InlineData("1 Dec 23:10", 0, "until everything is ready the bench is open for 4 h. No plan can be ready sooner.")]
    [InlineData("1 Dec 22:40", 0, "No plan can be ready before Tue 1 Dec 22:40: none is ready a sitting sooner.")] // it dries in the night, and might do so sooner
    [InlineData("30 Nov 20:10", 2, "No plan can be ready before Mon 30 Nov 20:10, at most 2 sittings sooner.")]
    public void What_is_proved_is_when_nothing_can_be_ready(string bound, int sittings, string said)
    {
        var ready = At("1 Dec 23:10");
        var plan = TwoPainters.Plan with
        {
            Finishes = [new ModelFinish("Gig", "Harbour", 1, At("1 Dec 20:00"), ready, null, null)],
            Measure = new PlanMeasure(100, 240, 200, At(bound), sittings, IsBestAsParted: false, CleanOuts: 0, StoppedEarly: false),
        };

        PlanText.Render(plan, TextStyle.Plain).ReplaceLineEndings(" ").Should().Contain(said);
    }

    [Theory]
    [InlineData(0, 1, "in time with 1 h to spare.")]
    [InlineData(29, 2, "in time with 29 d 2 h to spare.")]
    [InlineData(60, 0, "in time with 60 d to spare.")]
    [InlineData(99, 2, "in time with 14 weeks to spare.")]
    [InlineData(-70, 0, "after the due time, by up to 10 weeks.")]
    public void Time_to_spare_beyond_two_months_is_said_in_weeks(int days, int hours, string said)
    {
        var ready = At("1 Dec 20:00");
        var plan = Empty with { Finishes = [new ModelFinish("Gig", "Harbour", 1, ready, ready, ready.PlusHours((24 * days) + hours), null)] };

        PlanText.Render(plan, TextStyle.Plain).ReplaceLineEndings(" ").Should().Contain(said);
    }

    [Theory]
    [InlineData(5.5, "3.85 1.65", "3.9 mL 1.6 mL")]
    [InlineData(3.5, "2.45 1.05", "2.5 mL 1.0 mL")]
    [InlineData(1, "0.33 0.33 0.33", "0.4 mL 0.3 mL 0.3 mL")]
    [InlineData(0.5, "0.48 0.02", "0.5 mL a drop")]
    [InlineData(100.5, "33.5 33.5 33.5", "34.0 mL 34.0 mL 33.0 mL")]
    public void What_is_measured_of_each_part_adds_up_to_the_mix(double whole, string parts, string said)
    {
        var mix = new MixOrder("moss", whole, [.. parts.Split(' ').Select((part, i) => new MixPart(new string((char)('A' + i), 3), 1, double.Parse(part, CultureInfo.InvariantCulture), 0))], null);
        var plan = Empty with { Days = [Day(Sitting("4 Dec 19:00-21:00", Task("4 Dec 19:00-20:00", "Gig 1-1/1", "Brush moss on the hull")) with { Mixes = [mix] })] };

        var lines = PlanText.Render(plan, TextStyle.Plain).Split('\n').Where(line => line.Contains("1 part "));
        string.Join(' ', lines.Select(line => line[(line.IndexOf("1 part ", StringComparison.Ordinal) + 13)..].Trim())).Should().Be(said);
    }

    [Fact]
    public void A_plan_that_begins_in_the_past_says_so_in_one_line()
    {
        PlanText.Render(Empty, TextStyle.Plain).Should().NotContain("before it was asked for");
        PlanText.Render(Empty with { DaysPast = 12 }, TextStyle.Plain).Should().Contain("\nIt begins 12 days before it was asked for; nothing is taken as done since.\n");
        PlanMarkdown.Render(Empty with { DaysPast = 1 }).Should().Contain("It begins 1 day before it was asked for; nothing is taken as done since.");
    }

    [Fact]
    public void As_above_refers_to_a_reason_that_is_shown()
    {
        const string rack = "The drying rack is full until 'coat the hull' on Gig has dried.";
        var sitting = Sitting(
            "4 Dec 19:00-21:00",
            Task("4 Dec 19:00-19:10", "Gig 1-1/3", "Coat the hull", rack) with { FollowsOn = true },
            Task("4 Dec 19:20-19:30", "Gig 2-2/3", "Coat the hull", rack),
            Task("4 Dec 19:40-19:50", "Gig 3-3/3", "Coat the hull", rack));
        var reasons = PlanText.Render(Empty with { Days = [Day(sitting)] }, TextStyle.Plain).Split('\n').Where(line => line.Contains("why now  ", StringComparison.Ordinal));
        reasons.Select(line => line.Trim()).Should().Equal("why now  The drying rack is full until 'coat the hull' on Gig has", "why now  as above");
    }

    [Fact]
    public void A_terminal_and_a_pipe_get_the_same_words()
    {
        var piped = PlanText.Render(TwoWeeks.Plan, TextStyle.Plain);
        using var written = new StringWriter();
        PlanText.Write(TwoWeeks.Plan, AnsiConsole.Create(new AnsiConsoleSettings { Ansi = AnsiSupport.No, Out = new AnsiConsoleOutput(written) }));
        Words(written.ToString()).Should().Equal(Words(piped));
        Words(WithoutOwnColours(PlanText.Render(TwoWeeks.Plan, Drawing))).Should().Equal(Words(piped));
        piped.Should().NotContain("\u001b");
    }

    [Theory]
    [MemberData(nameof(Hostile.Names), MemberType = typeof(Hostile))]
    public void A_name_neither_steers_the_terminal_nor_becomes_markup(string name)
    {
        var text = PlanText.Render(Hostile.PlanOf(name), TextStyle.Plain);
        Hostile.Steers(text).Should().BeFalse();
        WithoutOwnColours(PlanText.Render(Hostile.PlanOf(name), Drawing)).Should().NotContain("\u001b");
        if (name == Hostile.Markup)
            text.Should().Contain(name);
    }

    [Fact]
    public void No_line_is_wider_than_the_page_whatever_the_names() =>
        Gen.Select(Names, Gen.Int[72, 120]).Sample(
            (name, width) => PlanText.Render(Hostile.PlanOf(name), new TextStyle { Width = width }).Split('\n').All(line => line.GetCellWidth() <= width),
            iter: 300);

    [Fact]
    public void Columns_stay_straight_beside_wide_names()
    {
        var plan = TwoWeeks.Plan with
        {
            Finishes = TwoWeeks.Plan.Finishes.Select(f => f with { Model = f.Model == "Line diver" ? "潮 diver 🐙" : f.Model }).ToSequence(),
        };
        var rows = PlanText.Render(plan, TextStyle.Plain).Split('\n').SkipWhile(line => !line.StartsWith("model ", StringComparison.Ordinal)).Take(4).ToList();
        rows.Select(row => row[..row.IndexOf("can be handled|Fri 11|Sat 12|Sun 13".Split('|').First(row.Contains), StringComparison.Ordinal)].GetCellWidth())
            .Distinct().Should().ContainSingle();
    }

    private static Gen<string> Names { get; } = Gen.OneOf(
        Gen.String[Gen.Char['!', '~'], 0, 140],
        Gen.String[Gen.OneOf(Gen.Char['一', '丿'], Gen.Char['a', 'c'], Gen.Const(' ')), 0, 90],
        Gen.String[Gen.Char['\0', '\uffff'], 0, 60]);

    private static int Occurrences(string text, string part) => text.Split(part).Length - 1;

    private static IEnumerable<string> Words(string text) =>
        text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries).Select(word => word.Replace("■", "#", StringComparison.Ordinal))
            .Where(word => !word.All(c => c is '=' or '-' or '━' or '─'));

    private static string WithoutOwnColours(string text) => System.Text.RegularExpressions.Regex.Replace(text, "\u001b\\[[0-9;]*m", "");
}
