using System.Text;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Reports;
using Pipeline.Tests.Units.Planning;

namespace Pipeline.Tests.Units.Reports;

/// <summary>Plans read back and compared: the two weeks, and the same with the mask a day later, the tokens left out and a lantern put in.</summary>
public sealed class ComparisonTests
{
    private static readonly WrittenPlan Before = WrittenPlan.Of(TwoWeeks.Plan);

    private static WrittenPlan After => Before with
    {
        Tasks = Before.Tasks.Where(task => task.Model != "Cargo token")
            .Select(task => task.Step.StartsWith("mask the viewports", StringComparison.Ordinal) ? task with { Start = task.Start + NodaTime.Duration.FromDays(1), End = task.End + NodaTime.Duration.FromDays(1), Sitting = task.Sitting + NodaTime.Duration.FromDays(1), SittingEnd = task.SittingEnd + NodaTime.Duration.FromDays(1) } : task)
            .Select(task => task.Step.StartsWith("sand", StringComparison.Ordinal) ? task with { Start = task.Start + NodaTime.Duration.FromMinutes(5), End = task.End + NodaTime.Duration.FromMinutes(17) } : task)
            .Append(Before.Tasks[0] with { Model = "Lantern", Step = "glue lantern", Words = "Glue the lantern" })
            .ToSequence(),
        Finishes = Before.Finishes.Where(finish => finish.Model != "Cargo token")
            .Select(finish => finish.Model == "Line diver" ? finish with { Ready = finish.Ready + NodaTime.Duration.FromHours(2) } : finish).ToSequence(),
        CloseDowns = Before.CloseDowns.Skip(2).ToSequence(),
    };

    private static PlanComparison Both => PlanComparison.Of(Before, After);

    [Fact]
    public void A_plan_is_read_back_as_it_was_written()
    {
        foreach (var plan in new[] { TwoWeeks.Plan, TwoPainters.Plan, Harbour.Empty })
        {
            var (read, wrong) = Read(PlanJson.Render(plan));
            wrong.Should().BeNull();
            read.Should().Be(WrittenPlan.Of(plan));
        }
    }

    [Fact]
    public void What_is_done_is_read_back_too_by_the_schemas()
    {
        var monday = Before.Tasks[0].End;
        var rest = TwoWeeks.Plan with { Days = TwoWeeks.Plan.Days.Skip(1).ToSequence(), Done = (Before with { Name = "one|two].json" }).DoneBy(monday) };
        var json = PlanJson.Render(rest);

        Schemas.Plan.Complaints(json).Should().BeEmpty();
        Read(json).Plan.Should().Be(WrittenPlan.Of(rest));
        Read(json).Plan!.Done!.Tasks.Should().HaveCount(1);
        Schemas.Comparison.Complaints(ComparisonJson.Render(PlanComparison.Of(Before, WrittenPlan.Of(rest)))).Should().BeEmpty();
        Read(json.Replace("\"until\": \"2026-11-30T19:16:00Z\"", "\"until\": \"2026-11-30T19:00:00Z\"", StringComparison.Ordinal)).Wrong
            .Should().Be("is not a whole plan: done.tasks[0] ends after the time up to which work is done");
        PlanMarkdown.Render(rest).Should().Contain("Done until Mon 30 Nov 19:16: 1 task, as one\\|two\\].json had it.");
        PlanText.Render(rest, TextStyle.Plain).ReplaceLineEndings(" ").Should().Contain("Done until Mon 30 Nov 19:16: 1 task, as one|two].json had it.");
    }

    [Theory]
    [InlineData("", "is no JSON: it goes wrong on line 1")]
    [InlineData("{\n  \"kind\": \"plan\",\n", "is no JSON: it goes wrong on line")]
    [InlineData("[]", "is JSON, but no plan")]
    [InlineData("{ \"kind\": 4 }", "is JSON, but no plan")]
    [InlineData("{ \"kind\": \"findings\" }", "holds findings, not a plan")]
    [InlineData("{ \"kind\": \"plan\" }", "is not a whole plan: 'version' is missing")]
    [InlineData("{ \"kind\": \"plan\", \"version\": 2 }", "is a plan of version 2; this program reads version 1")]
    [InlineData("{ \"kind\": \"plan\", \"version\": 1, \"zone\": \"UTC\", \"days\": {} }", "is not a whole plan: days is no list")]
    public void What_is_no_plan_is_told_apart(string json, string wrong) => Read(json).Wrong.Should().StartWith(wrong);

    [Theory]
    [InlineData("\"step\": \"sand all areas\",", "", "days[1].sittings[0].tasks[0]: 'step' is missing")]
    [InlineData("\"exactStart\": \"2026-12-03T19:00:00Z\"", "\"exactStart\": \"Thursday\"", "days[1].sittings[0].tasks[0].exactStart is no moment")]
    [InlineData("\"exactEnd\": \"2026-11-30T19:16:00Z\"", "\"exactEnd\": true", "days[0].sittings[0].tasks[0].exactEnd is no text")]
    [InlineData("\"firstUnit\": 1,\n              \"units\": 3", "\"firstUnit\": 0,\n              \"units\": 3", "days[0].sittings[0].tasks[0].firstUnit is no number from 1 on")]
    [InlineData("\"units\": 3,\n              \"ofUnits\": 3", "\"units\": 4,\n              \"ofUnits\": 3", "days[0].sittings[0].tasks[0] has more units than there are")]
    [InlineData("\"workEnd\": \"2026-11-30T19:16:00Z\"", "\"workEnd\": \"2026-11-30T18:16:00Z\"", "days[0].sittings[0].tasks[0] ends before it begins")]
    [InlineData("\"zone\": \"Europe/Lisbon\"", "\"zone\": \"Europe/Lisbom\"", "zone: there is no time zone 'Europe/Lisbom'")]
    public void What_is_wrong_in_a_plan_is_told_with_its_place(string was, string now, string wrong) =>
        Read(PlanJson.Render(TwoWeeks.Plan).Replace(was, now, StringComparison.Ordinal)).Wrong.Should().Be($"is not a whole plan: {wrong}");

    [Fact]
    public void A_plan_is_the_same_as_itself()
    {
        var both = PlanComparison.Of(Before, Before);

        both.IsSame.Should().BeTrue();
        both.Unmoved.Should().Be(Before.Tasks.Count);
        ComparisonText.Render(both, TextStyle.Plain).Should().Contain("Nothing is different");
    }

    [Fact]
    public void What_moved_is_new_or_gone()
    {
        Both.Moves.Should().HaveCount(2);
        Both.Moves.Single(move => move.IsToAnotherSitting).After.Step.Should().StartWith("mask the viewports");
        Both.Added.Should().ContainSingle().Which.Model.Should().Be("Lantern");
        Both.Gone.Should().NotBeEmpty().And.OnlyContain(task => task.Model == "Cargo token");
        (Both.Unmoved + Both.Moves.Count + Both.Added.Count).Should().Be(After.Tasks.Count);
    }

    [Fact]
    public void A_lot_parted_otherwise_is_compared_with_the_part_its_first_unit_was_in()
    {
        var lot = Before.Tasks.First(task => task.OfUnits > 2 && task.Units == task.OfUnits);
        var parted = Before with
        {
            Tasks = Before.Tasks.Without(task => task == lot).Append(lot with { Units = 2 })
                .Append(lot with { FirstUnit = 3, Units = lot.Units - 2, Start = lot.Start + NodaTime.Duration.FromHours(1) }).ToSequence(),
        };

        PlanComparison.Of(Before, parted).Moves.Select(move => (move.Before.FirstUnit, move.After.FirstUnit)).Should().Equal((1, 1), (1, 3));
        PlanComparison.Of(parted, Before).Moves.Should().ContainSingle().Which.Before.Units.Should().Be(2);
    }

    [Fact]
    public void A_start_on_the_half_minute_is_said_as_the_plan_on_the_wall_says_it()
    {
        // begun half a minute into 19:30, and no longer by the same hands
        var task = Before.Tasks[0];
        var half = task with { Start = task.Sitting + NodaTime.Duration.FromSeconds((30 * 60) + 30) };
        var other = half with { Painter = "Rui" };

        var said = ComparisonText.Render(PlanComparison.Of(With(half), With(other)), TextStyle.Plain);

        var minute = $"{(task.Sitting + NodaTime.Duration.FromMinutes(30)).InZone(Before.Zone):HH:mm}";
        said.Should().Contain($" {minute}  ").And.Contain($"was {minute};");
        PlanComparison.Of(With(half), With(half with { Start = half.Start - NodaTime.Duration.FromSeconds(30) })).Moves.Should().BeEmpty("both are the same minute");

        WrittenPlan With(WrittenTask first) => Before with { Tasks = Before.Tasks.Without(each => each == task).Prepend(first).ToSequence() };
    }

    [Fact]
    public void As_text() => Golden.Of("tests/Units/Reports/golden/comparison.txt").ShouldBe(ComparisonText.Render(Both, TextStyle.Plain));

    [Fact]
    public void As_markdown() => Golden.Of("tests/Units/Reports/golden/comparison.md").ShouldBe(ComparisonMarkdown.Render(Both));

    [Fact]
    public void As_json_by_its_schema()
    {
        var json = ComparisonJson.Render(Both);

        Schemas.Comparison.Complaints(json).Should().BeEmpty();
        Schemas.Comparison.Complaints(json.Replace("\"moves\"", "\"moved\"", StringComparison.Ordinal)).Should().NotBeEmpty();
        Schemas.Plan.Complaints(PlanJson.Render(TwoWeeks.Plan with { Kept = Both })).Should().BeEmpty();
    }

    [Theory]
    [MemberData(nameof(Hostile.Names), MemberType = typeof(Hostile))]
    public void A_name_is_a_name(string name)
    {
        var plan = WrittenPlan.Of(Hostile.PlanOf(name));
        var both = PlanComparison.Of(plan with { Tasks = [] }, plan);

        Hostile.Steers(ComparisonText.Render(both, TextStyle.Plain)).Should().BeFalse();
        Hostile.Steers(ComparisonJson.Render(both)).Should().BeFalse();
        Hostile.Steers(ComparisonMarkdown.Render(both)).Should().BeFalse();
    }

    [Fact]
    public void A_sitting_that_begins_an_hour_later_is_still_the_same()
    {
        var task = Before.Tasks[0];
        var hour = NodaTime.Duration.FromHours(1);

        new TaskMove(task, task with { Start = task.Start + hour, Sitting = task.Sitting + hour }).IsToAnotherSitting.Should().BeFalse();
        new TaskMove(task, task with { Start = task.SittingEnd, Sitting = task.SittingEnd, SittingEnd = task.SittingEnd + hour }).IsToAnotherSitting.Should().BeTrue();
    }

    [Theory]
    [InlineData("UTC")]
    [InlineData("Europe/Lisbon")]
    [InlineData("Europe/Berlin")]
    [InlineData("Asia/Kolkata")]
    [InlineData("America/St_Johns")]
    public void A_plan_written_in_any_zone_in_summer_or_winter_is_read_again_as_it_was(string zone)
    {
        foreach (var from in new[] { "2026-01-12 18:00", "2026-07-06 18:00" })
        {
            var plan = Workshop.In(zone).Weekly("Mon Tue Wed", "19:00", "22:00").Model("Crane", 2, r => r.Clean().Work("trim", 25).Photograph()).Plan(from);

            var (read, wrong) = Read(PlanJson.Render(plan));

            wrong.Should().BeNull();
            PlanComparison.Of(read!, WrittenPlan.Of(plan)).IsSame.Should().BeTrue();
        }
    }

    private static (WrittenPlan? Plan, string? Wrong) Read(string json) => PlanJsonReading.Read(Encoding.UTF8.GetBytes(json));
}
