using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Nothing is offered of which a part would do: whoever leaves one of its members out is late again.</summary>
public class WaysOutLeastTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer);
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    [Fact]
    public void One_evening_where_drying_missed_a_sitting_by_an_hour()
    {
        // trimmed on Monday until 19:30, it stands until 20:18 on Tuesday, too late for half an hour more of work; the next sitting is on Thursday
        var ways = Workshop.In().Weekly("Mon Tue Thu", "19:00", "20:30")
            .Model("Diver", 1, r => r.Work("trim", 30).Rest(hours: 24.8).Work("sand", 30), due: "2026-12-02 22:00")
            .Plan().WaysOut.Where(way => way.LateMinutes == 0).ToList();

        ways.Select(way => way.Change).OfType<Change.MoreSittings>().Should().NotBeEmpty().And.OnlyContain(more => more.Sittings.Count == 1);
    }

    [Theory]
    [InlineData(1, 8, 0)]
    [InlineData(2, 9, 1)]
    [InlineData(2, 10, 2)]
    public void Leaving_any_one_of_its_sittings_or_days_out_is_late_again(int days, int hours, int waits)
    {
        var changes = Late(days, hours, waits).Plan().WaysOut.Where(way => way.LateMinutes == 0).Select(way => way.Change).ToList();
        var sittings = changes.OfType<Change.MoreSittings>().Where(more => more.Sittings.Count > 1).ToList();
        var helpers = changes.OfType<Change.OneMorePainter>().Where(more => more.Days.Count > 1).ToList();

        (sittings.Count + helpers.Count).Should().BeGreaterThan(0, "it takes more than one");
        foreach (var more in sittings)
        {
            IsLate(With(more.Sittings)).Should().BeFalse("with all of them it is in time");
            foreach (var left in more.Sittings)
                IsLate(With(more.Sittings.Where(sitting => sitting != left))).Should().BeTrue($"without {left.From} it is late");
        }

        foreach (var more in helpers)
        {
            IsLate(Helped(more.Days)).Should().BeFalse("with all of them it is in time");
            foreach (var left in more.Days)
                IsLate(Helped(more.Days.Where(day => day != left))).Should().BeTrue($"without {left} it is late");
        }

        Workshop With(IEnumerable<SittingTime> more) =>
            more.Aggregate(Late(days, hours, waits), (bench, each) => bench.On($"{each.From.Date:uuuu-MM-dd}", $"{each.From:HH:mm}", $"{each.To:HH:mm}"));
        Workshop Helped(IEnumerable<LocalDate> dates) =>
            dates.Aggregate(Late(days, hours, waits).Painter("painter 1"), (bench, date) => bench.PainterOn($"{date:uuuu-MM-dd}", "a second painter"));
    }

    // Some evenings a week, work by the hour, and steps that follow a day after each other.
    private static Workshop Late(int days, int hours, int waits)
    {
        var weekdays = string.Join(' ', new[] { "Mon", "Wed", "Fri", "Sun" }.Take(days));
        return Workshop.In().Weekly(weekdays, "19:00", "21:00").Tool("airbrush", 1)
            .Model("Diver", hours, r => r.Work("trim", 60), due: "2026-12-06 21:00")
            .Model("Crane", 1, r => Coats(r, waits), due: "2026-12-05 21:00");
    }

    private static void Coats(RouteSteps route, int waits)
    {
        route.Spray(Undercoat, role: LayerRole.Undercoat);
        for (var i = 0; i < waits; i++)
            route.Mask($"mask {i + 1}", "suit").Spray(Boot, "boots").Unmask($"mask {i + 1}");
    }

    private static bool IsLate(Workshop workshop) =>
        workshop.Plan().Finishes.Any(finish => finish.Due is { } due && finish.Ready.ToInstant() > due.ToInstant());
}
