using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Reports;
using TextStyle = Pipeline.Reports.TextStyle;

namespace Pipeline.Tests.Units.Planning;

/// <summary>A painter has done part of a plan and asks for the rest. Evenings from 19:00, beginning on Monday 30 November.</summary>
public class DoneTests
{
    private const string Evenings = """
        sittings: [{ days: mon-fri, from: 19:00, to: 21:00 }]
        tools: { airbrush: 1 }
        """;

    private const string Crew = """
        - model: Boat
          count: 3
          material: styrene
          areas: { hull: 20 cm², deck: 5 cm² }
          route:
            - clean: all
            - undercoat: all
              with: slate undercoat
              by: airbrush
            - coat: hull
              with: chalk ground
              by: airbrush
              coats: 2
            - coat: deck
              with: wet boot
              by: brush
            - photograph: all
        - model: Crane
          count: 1
          material: styrene
          areas: { jib: 20 cm² }
          route:
            - clean: all
            - undercoat: all
              with: slate undercoat
              by: airbrush
            - coat: jib
              with: wet boot
              by: brush
            - photograph: all
        """;

    private static readonly Wall Boats = Wall.Of(Evenings, Crew);

    private const string Undercoat = "- undercoat: all\n            with: slate undercoat\n            by: airbrush";

    private const string Tuesday = "2026-12-01 22:00";

    private const string Monday = "2026-11-30 22:00";

    private static string WordsOf(Plan plan) => PlanText.Render(plan, TextStyle.Plain).ReplaceLineEndings(" ");

    [Fact]
    public void What_is_left_stays_where_it_was_and_what_is_done_is_told_in_a_line()
    {
        var rest = Boats.After(Monday);

        rest.Plan.Kept!.IsSame.Should().BeTrue();
        rest.Tasks.Should().NotBeEmpty().And.OnlyContain(task => task.From.Day > 30 || task.From.Month == 12);
        rest.Plan.Done!.Tasks.Should().OnlyContain(task => task.Start < Wall.At(Monday)).And.HaveCount(Boats.Tasks.Count - rest.Tasks.Count);
        WordsOf(rest.Plan).Should().Contain($"Done until Mon 30 Nov 22:00: {rest.Plan.Done.Tasks.Count} tasks, as one.json had them.");
        rest.Plan.Findings.Where(finding => finding.Silenced is null).Should().BeEmpty();
    }

    [Fact]
    public void Shopping_mixes_and_hands_are_those_of_what_is_left()
    {
        var undercoated = Boats.Tasks.Last(task => task.Words.StartsWith("Airbrush slate undercoat", StringComparison.Ordinal)).To.ToString("uuuu-MM-dd HH:mm", null);
        var rest = Boats.After(undercoated).Plan;

        rest.Shopping.Select(item => item.Name).Should().NotContain("slate undercoat").And.Contain("wet boot");
        Boats.Plan.Shopping.Select(item => item.Name).Should().Contain("slate undercoat");
        rest.Measure.AttendedMinutes.Should().Be(rest.Days.SelectMany(day => day.Sittings).Sum(sitting => sitting.AttendedMinutes));
        rest.Measure.AttendedMinutes.Should().BeLessThan(Boats.Plan.Measure.AttendedMinutes);
        rest.Measure.OpenMinutes.Should().BeLessThan(Boats.Plan.Measure.OpenMinutes);
    }

    [Fact]
    public void The_first_wait_is_told_from_the_work_that_began_it()
    {
        // a coat of enamel on Monday, and the next thing on it when it may be handled
        var wall = Wall.Of(Evenings, Simple("- coat: hull\n  with: hull yellow\n  by: brush\n- photograph: all"));
        var coat = wall.Task("Brush hull yellow");
        var dries = Wall.Said(coat.To.Plus(-Duration.FromMinutes(2)))[4..];
        var rest = wall.After(Monday, "2026-12-01 18:00");

        rest.Begins("Photograph").Should().Be(wall.Begins("Photograph"));
        rest.Task("Photograph").WhyNotEarlier.Should().Contain("'coat the hull'").And.Contain($"done Mon 30 Nov {dries}");
        rest.Plan.CriticalChain[0].Should().StartWith($"Mon 30 Nov {Wall.Said(coat.From)[4..]}").And.EndWith("It has been done.");
    }

    [Fact]
    public void Work_planned_for_an_evening_on_which_nothing_was_done_is_still_to_do()
    {
        var rest = Boats.After(Monday, "2026-12-03 18:00");

        (rest.Plan.Done!.Tasks.Count + rest.Tasks.Count).Should().Be(Boats.Tasks.Count);
        rest.Tasks.Should().OnlyContain(task => task.From.Day >= 3 && task.From.Month == 12);
    }

    [Fact]
    public void A_task_under_way_is_done_anew_and_at_once()
    {
        var task = Boats.Task("Airbrush slate undercoat");
        var inside = task.From.Plus(Duration.FromMinutes(2)).ToString("uuuu-MM-dd HH:mm", null);
        var rest = Boats.After(inside);

        rest.Task("Airbrush slate undercoat", task.Model).From.ToInstant().Should().Be(Wall.At(inside));
        var note = rest.Plan.Findings.Should().ContainSingle(finding => finding.Level == Level.Note).Subject;
        note.Message.Should().Contain("was under way").And.Contain("is planned anew");
    }

    [Fact]
    public void Of_a_lot_under_way_the_pieces_that_were_through_are_done()
    {
        var wall = Wall.Of(Evenings, Simple("- trim: all\n  minutes: 20 min\n- photograph: all", count: 4));
        var rest = wall.After("2026-11-30 19:45");

        rest.Tasks[0].Should().Match<PlannedTask>(task => task.Verb == "trim" && task.FirstUnit == 3 && task.Units == 2);
        Wall.Said(rest.Tasks[0].From).Should().Be("Mon 19:45");
        rest.Plan.Findings.Should().ContainSingle(finding => finding.Level == Level.Note).Which.Message
            .Should().Be("'trim all areas' on Boat was under way Mon 30 Nov 19:45 (from 19:00 to 20:27): 2 of its 4 pieces were through by the plan and count as done.");
        rest.After("2026-11-30 22:00").Plan.Done!.Tasks.Where(task => task.Step == rest.Tasks[0].Step).Select(task => (task.FirstUnit, task.Units)).Should().Equal((1, 2), (3, 2));
    }

    [Theory]
    [InlineData("count: 3", "count: 4", "Boat is 4 pieces now instead of 3: done is what was done on the first 3, and the new one begins at the first step.", 4)]
    [InlineData("count: 3", "count: 2", "Boat is 2 pieces now instead of 3: what was done on the others is left out.", 0)]
    public void A_model_with_more_or_fewer_pieces(string was, string now, string said, int firstUnit)
    {
        var rest = Boats.After(Monday, null, (was, now));

        rest.Plan.Findings.Select(finding => finding.Message).Should().Contain(said);
        var cleaned = rest.Tasks.Where(task => task is { Model: "Boat", Verb: "clean" }).ToList();
        if (firstUnit == 0)
            cleaned.Should().BeEmpty();
        else
            cleaned.Should().ContainSingle().Which.Should().Match<PlannedTask>(task => task.FirstUnit == firstUnit && task.Units == 1);
    }

    [Fact]
    public void A_step_that_now_takes_longer_has_been_done_all_the_same()
    {
        var rest = Boats.After(Monday, null, ("- clean: all", "- clean: all\n            minutes: 50 min"));

        rest.Tasks.Should().NotContain(task => task.Verb == "clean");
        rest.Plan.Kept!.IsSame.Should().BeTrue();
    }

    [Fact]
    public void A_new_step_before_work_already_done_has_no_plan_and_says_why()
    {
        var finding = Boats.NoneAfter(Tuesday, (Undercoat + "\n          - coat: hull", "- trim: all\n          " + Undercoat + "\n          - coat: hull"))
            .Should().ContainSingle().Subject;

        finding.Message.Should().StartWith("'trim all areas' on Boat is new and stands before work already done: 'undercoat all areas' was done Tue 1 Dec 19:");
        finding.Remedy.Should().StartWith("Move it behind what has been done");
        finding.Model.Should().Be("Boat");
    }

    [Fact]
    public void A_step_done_with_another_paint_is_said_and_the_one_in_the_file_is_still_to_do()
    {
        var done = Boats.Task("Brush wet boot", "Crane").To.ToString("uuuu-MM-dd HH:mm", null);
        var rest = Boats.After(done, null, ("- coat: jib\n            with: wet boot", "- coat: jib\n            with: sea boot"));

        rest.Plan.Findings.Should().Contain(finding => finding.Message.StartsWith("'coat jib with wet boot' on Crane was done", StringComparison.Ordinal)
            && finding.Message.Contains("is not in the file any more", StringComparison.Ordinal));
        rest.Task("Brush sea boot").Model.Should().Be("Crane");
    }

    [Fact]
    public void One_more_coat_is_still_to_do()
    {
        var coat = Boats.Tasks.Last(task => task.Words.StartsWith("Airbrush chalk ground", StringComparison.Ordinal)).To.ToString("uuuu-MM-dd HH:mm", null);
        var rest = Boats.After(coat, null, ("coats: 2", "coats: 3"));

        rest.Tasks.Where(task => task.Words.StartsWith("Airbrush chalk ground", StringComparison.Ordinal)).Should().ContainSingle().Which.Coat.Should().Be(3);
    }

    [Fact]
    public void A_decided_time_that_is_past_stands_in_nobodys_way()
    {
        var wall = Wall.Of(Evenings, Simple("- clean: all\n- trim: all\n  at: 2026-11-30 20:00\n- photograph: all"));

        wall.After(Monday).Begins("Photograph").Should().Be(wall.Begins("Photograph"));
    }

    [Fact]
    public void What_needs_no_hands_goes_on_by_itself()
    {
        var wall = Wall.Of(Evenings, Simple("- clean: all\n- wait: all\n  for: 30 h\n- trim: all\n- photograph: all"));
        var rest = wall.After(Monday);

        rest.Begins("Trim").Should().Be(wall.Begins("Trim"));
        wall.After(wall.Task("Trim").To.ToString("uuuu-MM-dd HH:mm", null)).Begins("Photograph").Should().Be(wall.Begins("Photograph"));
    }

    [Fact]
    public void A_lot_parted_over_evenings_is_done_in_part()
    {
        var wall = Wall.Of(Evenings, Simple("- trim: all\n  minutes: 35 min\n- photograph: all", count: 5));
        var first = wall.Tasks[0];
        first.Units.Should().BeInRange(1, 4);
        var rest = wall.After(Monday);

        rest.Tasks[0].Should().Match<PlannedTask>(task => task.Verb == "trim" && task.FirstUnit == first.Units + 1);
        rest.Plan.Kept!.IsSame.Should().BeTrue();
    }

    [Fact]
    public void A_second_time_what_was_done_the_first_is_still_known()
    {
        var last = Boats.Tasks.Max(task => task.To.ToInstant());
        var two = Boats.After(Monday);
        var three = two.After(last.InUtc().ToString("uuuu-MM-dd HH:mm", null));

        three.Tasks.Should().BeEmpty();
        three.Plan.Done!.Tasks.Should().HaveCount(Boats.Tasks.Count);
        three.Plan.Finishes.Select(finish => finish.Ready).Should().Equal(Boats.Plan.Finishes.Select(finish => finish.Ready));
        WordsOf(three.Plan).Should().Contain("Nothing is left for the hands to do.");
    }

    [Fact]
    public void Compared_with_the_plan_before_done_work_is_not_gone()
    {
        var both = PlanComparison.Of(WrittenPlan.Of(Boats.Plan), WrittenPlan.Of(Boats.After(Monday).Plan));

        both.Gone.Should().BeEmpty();
        both.IsSame.Should().BeTrue();
        (both.Sittings.Difference, both.CleanOuts.Difference).Should().Be((0, 0));
    }

    // Undercoated on Monday; on Tuesday masked, sprayed, the mask off, the lens painted.
    private static readonly Wall Masked = Wall.Of(Evenings, """
        - model: Boat
          count: 3
          material: styrene
          areas: { hull: 20 cm², lens: 2 cm² }
          route:
            - undercoat: all
              with: slate undercoat
              by: airbrush
            - mask: lens
              using: low-tack tape
              as: blobs
            - coat: hull
              with: chalk ground
              by: airbrush
            - unmask: blobs
            - coat: lens
              with: wet boot
              by: brush
        """);

    [Theory]
    [InlineData("Mask", "2026-12-04 18:00", "Fri 19:18")]
    [InlineData("Airbrush chalk ground", "2026-12-04 18:00", "Fri 19:00")]
    [InlineData("Mask", "2026-12-02 20:00", "Wed 20:")]
    public void A_mask_that_has_been_on_for_too_long_comes_off_at_the_first_chance_and_the_plan_says_so(string lastDone, string from, string off)
    {
        var done = Masked.Task(lastDone).To;
        var rest = Masked.After(done.ToString("uuuu-MM-dd HH:mm", null), from);

        rest.Begins("Unmask").Should().StartWith(off);
        rest.Task("Unmask").NotLaterThan.Should().BeNull("it is too late already");
        var warning = rest.Plan.Findings.Should().ContainSingle(finding => finding.Rule == "mask-on-too-long").Subject;
        warning.Message.Should().Contain("at most 24 h").And.Contain("'mask the lens' was done Tue 1 Dec 19:06");
        warning.Remedy.Should().NotBeNullOrEmpty();
    }

    [Fact]
    public void A_mask_that_may_stay_comes_off_in_time()
    {
        var rest = Masked.After(Masked.Task("Airbrush chalk ground").To.ToString("uuuu-MM-dd HH:mm", null), "2026-12-02 18:00");

        rest.Begins("Unmask").Should().Be("Wed 19:00");
        rest.Task("Unmask").NotLaterThan!.Value.ToString("ddd HH:mm", null).Should().Be("Wed 19:06");
        rest.Plan.Findings.Where(finding => finding.Level != Level.Note).Should().BeEmpty();
    }

    [Fact]
    public void Inside_a_sitting_the_airbrush_holds_what_it_held_and_after_it_nothing()
    {
        const string Both = "- model: Boat\n  count: 1\n  material: styrene\n  areas: { hull: 20 cm² }\n  route:\n    - undercoat: hull\n      with: slate undercoat\n      by: airbrush\n"
            + "- model: Crane\n  count: 1\n  material: styrene\n  areas: { jib: 20 cm² }\n  route:\n    - undercoat: jib\n      with: chalk ground\n      by: airbrush\n";
        var wall = Wall.Of(Evenings, Both);
        var first = wall.Tasks[0];
        var rest = wall.After(first.To.ToString("uuuu-MM-dd HH:mm", null));
        var later = wall.After(first.To.ToString("uuuu-MM-dd HH:mm", null), "2026-12-01 18:00");

        wall.Tasks[1].CleanOutBefore.Should().NotBeNull();
        rest.Tasks.Should().ContainSingle().Which.CleanOutBefore.Should().Be(wall.Tasks[1].CleanOutBefore);
        rest.Tasks[0].From.Should().Be(wall.Tasks[1].From);
        later.Tasks.Should().ContainSingle().Which.CleanOutBefore.Should().BeNull();
    }

    [Fact]
    public void An_airbrush_left_loaded_in_a_sitting_under_way_is_told()
    {
        var sprayed = Masked.Task("Airbrush chalk ground").To.ToString("uuuu-MM-dd HH:mm", null);

        Masked.After(sprayed).Plan.Findings.Should().ContainSingle(finding => finding.Level == Level.Note)
            .Which.Message.Should().Be("The airbrush still holds chalk ground from before Tue 1 Dec 19:30, and nothing more is sprayed in this sitting.");
        Masked.After(sprayed, "2026-12-02 18:00").Plan.Findings.Should().NotContain(finding => finding.Level == Level.Note, "it was cleaned on Tuesday");
    }

    [Fact]
    public void What_lies_on_the_rack_still_takes_its_place()
    {
        // enamel is wet for hours, and the rack holds one
        var wall = Wall.Of("sittings: [{ days: mon-fri, from: 08:00, to: 21:00 }]\ntools: { airbrush: 1, drying rack: 1 }", Sprayed("Boat") + Sprayed("Crane"));
        var first = wall.Tasks[0];
        var rest = wall.After(first.To.ToString("uuuu-MM-dd HH:mm", null));

        wall.Tasks.Should().HaveCount(2);
        rest.Tasks.Should().ContainSingle().Which.From.Should().Be(wall.Tasks[1].From);
        rest.Tasks[0].WhyNotEarlier.Should().Contain("The drying rack is full");
        (rest.Tasks[0].From.ToInstant() - first.To.ToInstant()).Should().BeGreaterThan(Duration.FromHours(1));

        static string Sprayed(string model) =>
            $"- model: {model}\n  count: 1\n  material: styrene\n  areas: {{ hull: 20 cm² }}\n  route:\n    - coat: hull\n      with: hull yellow\n      by: airbrush\n";
    }

    [Fact]
    public void What_the_day_has_had_already_counts()
    {
        var wall = Wall.Of("sittings: [{ days: mon-fri, from: 19:00, to: 21:00 }]\nmost-per-day: 60 min", Simple("- trim: all\n  minutes: 30 min", count: 3));
        var rest = wall.After(wall.Tasks[0].From.Plus(Duration.FromMinutes(60)).ToString("uuuu-MM-dd HH:mm", null));

        rest.Begins("Trim").Should().Be("Tue 19:00");
    }

    private static string Simple(string route, int count = 2) => $$"""
        - model: Boat
          count: {{count}}
          material: styrene
          areas: { hull: 20 cm², deck: 5 cm² }
          route:
        {{string.Join('\n', route.Split('\n').Select(line => "    " + line))}}
        """;
}
