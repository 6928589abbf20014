namespace Pipeline.Workflows;

/// <summary>
/// What quantities look like, as regular expressions (ECMA 262) for the schema. They accept all that the program reads; a few
/// slips of meaning (31 February, a range upside down) only the program sees.
/// </summary>
internal static class Patterns
{
    public const string Number = "^" + Digits + "$";
    public const string Whole = "^[0-9]+$";
    public const string YesOrNo = "^(yes|no|true|false)$";
    public const string Duration = "^" + OneTime + "$";
    public const string DurationOrMinutes = "^(" + OneTime + "|" + Digits + ")$";
    public const string DurationRange = "^((" + OneTime + "|" + Digits + ")\\s*[-–]\\s*)?" + OneTime + "$";
    public const string DurationRangeOrNever = "^(never|((" + OneTime + "|" + Digits + ")\\s*[-–]\\s*)?" + OneTime + ")$";
    public const string Size = "^(tiny|small|medium|large|huge|terrain|" + Digits + "\\s*[cm]?m[²2])$";
    public const string Volume = "^" + Digits + "\\s*(mL|ml|L|l)$";
    public const string Share = "^" + Digits + "\\s*%$";
    public const string Temperature = "^[-−]?" + Digits + "\\s*°[CF]$";
    public const string Colour = "^#[0-9A-Fa-f]{6}$";
    public const string Date = "^2[01][0-9]{2}-[01][0-9]-[0-3][0-9]$";
    public const string Dates = "^2[01][0-9]{2}-[01][0-9]-[0-3][0-9](\\s*\\.\\.\\s*2[01][0-9]{2}-[01][0-9]-[0-3][0-9])?$";
    public const string DateTime = "^2[01][0-9]{2}-[01][0-9]-[0-3][0-9][ T]\\s*[0-2]?[0-9]:[0-5][0-9]$";
    public const string Time = "^[0-2]?[0-9]:[0-5][0-9]$";
    public const string Days = "^(" + Day + "|daily)(\\s*[-–,]\\s*(" + Day + "|daily))*$";

    private const string Digits = "[0-9]+(\\.[0-9]+)?";
    private const string TimeUnit = "(s|seconds|min|minutes?|h|hours?|d|days?)";
    private const string OneTime = Digits + "\\s*" + TimeUnit + "(\\s*" + Digits + "\\s*" + TimeUnit + ")*";
    private const string Day = "([Mm]on(day)?|[Tt]ue(sday)?|[Ww]ed(nesday)?|[Tt]hu(rsday)?|[Ff]ri(day)?|[Ss]at(urday)?|[Ss]un(day)?)";

    /// <summary>A temperature, or a word in its place.</summary>
    public static string TemperatureOr(string word) => "^(" + word + "|[-−]?" + Digits + "\\s*°[CF])$";

    /// <summary>A time, or a word in its place.</summary>
    public static string DurationOr(string word) => "^(" + word + "|" + OneTime + ")$";
}
