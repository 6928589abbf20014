using System.Globalization;
using CsCheck;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>What can be written for each kind of value, seen through a verb that has a key of every kind.</summary>
public class QuantityTests
{
    private static TestTrade.Everything Read(string key, string value)
    {
        Written.Route($"- everything: suit\n  {key}: {value}");
        return TestTrade.EverythingVerb.Last!;
    }

    [Fact]
    public void Keys_left_out_have_their_defaults()
    {
        Written.Route("- everything: suit");
        TestTrade.EverythingVerb.Last.Should().Be(new TestTrade.Everything());
    }

    [Theory]
    [InlineData("90 min", 90)]
    [InlineData("90min", 90)]
    [InlineData("2 h", 120)]
    [InlineData("1.5 h", 90)]
    [InlineData("1 h 30 min", 90)]
    [InlineData("3 d", 4320)]
    [InlineData("30 s", 0.5)]
    [InlineData("2 hours", 120)]
    public void Times(string text, double minutes)
    {
        Read("busy", text).Busy.Should().Be(new Attended(minutes));
        Read("rest", text).Rest.Should().Be(new Drying(minutes));
        Read("sets", text).Sets.Should().Be(DryingRange.Minutes(minutes, minutes));
    }

    [Theory]
    [InlineData("12-24 h", 720, 1440)]
    [InlineData("12–24 h", 720, 1440)]
    [InlineData("30 min - 1 h", 30, 60)]
    [InlineData("0-2 h", 0, 120)]
    public void Ranges(string text, double low, double high) => Read("sets", text).Sets.Should().Be(DryingRange.Minutes(low, high));

    [Theory]
    [InlineData("30 cm²", 30)]
    [InlineData("30 cm2", 30)]
    [InlineData("30\u00A0cm²", 30)]
    [InlineData("250 mm²", 2.5)]
    [InlineData("0.02 m²", 200)]
    [InlineData("terrain", 600)]
    [InlineData("tiny", 1)]
    public void Sizes(string text, double squareCentimetres) => Read("size", text).Size!.Value.SquareCentimetres.Should().BeApproximately(squareCentimetres, 1e-9);

    [Fact]
    public void Other_values()
    {
        Read("volume", "7.5 mL").Volume.Should().Be(new Volume(7.5));
        Read("volume", "0.25 L").Volume.Should().Be(new Volume(250));
        Read("share", "40 %").Share.Should().Be(new Share(0.4));
        Read("warmth", "19 °C").Warmth.Should().Be(new Temperature(19));
        Read("warmth", "-4.5 °C").Warmth.Should().Be(new Temperature(-4.5));
        Read("warmth", "68 °F").Warmth!.Value.DegreesCelsius.Should().BeApproximately(20, 1e-9);
        Read("whole", "007").Whole.Should().Be(7);
        Read("number", "2.5").Number.Should().Be(2.5);
        Read("wet-in-wet", "yes").WetInWet.Should().BeTrue();
        Read("wet-in-wet", "\"true\"").WetInWet.Should().BeTrue();
        Read("sheen", "Satin").Sheen.Should().Be(Sheen.Satin);
        Read("liquid", "white spirit").Liquid.Should().Be(Liquid.WhiteSpirit);
        Read("liquid", "white-spirit").Liquid.Should().Be(Liquid.WhiteSpirit);
        Read("until", "touch-dry").Until.Should().Be(DryingState.TouchDry);
        Read("paint", "harbour black").Paint!.Name.Should().Be("harbour black");
        Read("paints", "[harbour black, rope bone]").Paints.Select(paint => paint.Name).Should().Equal("harbour black", "rope bone");
        Read("paints", "rope bone").Paints.Select(paint => paint.Name).Should().Equal("rope bone");
        Read("numbers", "[1, 2.5]").Numbers.Should().Equal(1, 2.5);
        Read("mask", "Low-tack tape").Mask!.Kind.Should().Be(MaskKind.Tape);
        Read("clear", "[glass, helmet]").Clear!.Names.Should().Equal("helmet", "glass");
        Read("clear", "all").Clear!.Names.Should().Equal("suit", "helmet", "glass");
        Read("text", "19:00").Text.Should().Be("19:00");
    }

    [Theory]
    [InlineData("busy", "4", "‘4’ has no unit.")]
    [InlineData("busy", "4 m", "‘m’ is no unit of time.")]
    [InlineData("busy", "30 min 1 h", "from the larger unit to the smaller")]
    [InlineData("busy", "1 h 30", "has no unit")]
    [InlineData("busy", "-2 h", "less than nothing")]
    [InlineData("busy", "2,5 h", "the decimal sign is a point")]
    [InlineData("busy", ".5 h", "not a number in plain digits")]
    [InlineData("busy", "5. h", "not a number in plain digits")]
    [InlineData("busy", "1.2.3 h", "not a number in plain digits")]
    [InlineData("busy", "1e400 h", "does not begin with a number")]
    [InlineData("busy", "99999999999999999999 h", "more digits than anybody measures")]
    [InlineData("busy", "99999999 h", "longer than any paint dries")]
    [InlineData("busy", "Infinity", "does not begin with a number")]
    [InlineData("busy", "٣ h", "does not begin with a number")]
    [InlineData("busy", "[2 h]", "Here stands a list.")]
    [InlineData("busy", "{ a: 2 h }", "Here stands a mapping")]
    [InlineData("busy", "2 h 5", "has no unit")]
    [InlineData("sets", "24-12 h", "goes from the longer time to the shorter")]
    [InlineData("sets", "12-24-36 h", "‘24-36 h’ is not a time")]
    [InlineData("size", "30 cm", "‘cm’ is no unit of surface.")]
    [InlineData("size", "30", "units cm², mm², m²")]
    [InlineData("size", "9999999 m²", "more than any bench sees")]
    [InlineData("volume", "7 mg", "units mL, L")]
    [InlineData("share", "0.4", "has no unit")]
    [InlineData("share", "140 %", "more than the whole")]
    [InlineData("warmth", "19 C", "no unit of temperature")]
    [InlineData("warmth", "190 °C", "not a temperature of any bench")]
    [InlineData("whole", "2.5", "not a whole number")]
    [InlineData("whole", "1000000000", "is not from 0 to 1,000,000")]
    [InlineData("number", "NaN", "does not begin with a number")]
    [InlineData("number", "1 000", "is not a plain number")]
    [InlineData("wet-in-wet", "on", "neither yes nor no")]
    [InlineData("liquid", "white sprit", "none of the choices")]
    [InlineData("numbers", "[]", "The list is empty.")]
    [InlineData("numbers", "[1, x]", "does not begin with a number")]
    public void What_cannot_be_understood_is_refused_at_its_place(string key, string value, string says)
    {
        var findings = Written.Bind(Written.WithRoute($"- everything: suit\n  {key}: {value}")).Findings;
        findings.Should().ContainSingle().Which.Should().Match<Finding>(finding => finding.Place.Line == 18 && finding.Place.Column >= 15 + key.Length);
        (findings[0].Message + " " + findings[0].Remedy).Should().Contain(says);
    }

    [Fact]
    public void A_time_as_the_program_writes_it_is_read_as_the_same_time() =>
        Gen.Int[0, 100_000].Sample(minutes =>
        {
            var written = minutes >= 4320 ? (minutes / 1440 * 1440) : minutes >= 120 ? minutes / 60 * 60 : minutes;
            return DurationText.Minutes(new Drying(written).ToString()).Value.Equals(written);
        });

    [Fact]
    public void No_text_makes_a_quantity_throw_or_be_other_than_finite() =>
        Gen.String[Gen.Char["0123456789.,-–+ eEaNhmindcsL%°CF²µ\u00A0٣½"], 0, 12].Sample(text =>
        {
            var sizes = AmountText.SizeOrClass(text);
            var volumes = AmountText.Volume(text);
            var shares = AmountText.Share(text);
            var warmths = AmountText.Temperature(text);
            var ranges = DurationText.Range(text);
            _ = CalendarText.DateTime(text);
            _ = CalendarText.Days(text);
            return (sizes.Wrong is not null || double.IsFinite(sizes.Value.SquareCentimetres))
                && (volumes.Wrong is not null || double.IsFinite(volumes.Value.Millilitres))
                && (shares.Wrong is not null || shares.Value.Fraction <= 1)
                && (warmths.Wrong is not null || double.IsFinite(warmths.Value.DegreesCelsius))
                && (ranges.Wrong is not null || ranges.Value.Low.Minutes <= ranges.Value.High.Minutes);
        });

    [Fact]
    public void The_language_of_the_machine_does_not_matter()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            comma.NumberFormat.NumberGroupSeparator = ".";
            CultureInfo.CurrentCulture = comma;
            Read("number", "2.5").Number.Should().Be(2.5);
            Read("busy", "1.5 h").Busy.Should().Be(new Attended(90));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
