using System.Globalization;
using System.Reflection;

namespace Pipeline.Engine;

/// <summary>An exception of somebody else's code in one line, without a stack trace.</summary>
internal static class Faults
{
    private const int LongestMessage = 300;

    public static string InWords(Exception fault)
    {
        while (fault is TargetInvocationException or TypeInitializationException && fault.InnerException is { } inner)
            fault = inner;
        if (fault is ReflectionTypeLoadException types && types.LoaderExceptions.FirstOrDefault(each => each is not null) is { } first)
            fault = first;
        string message;
        try
        {
            message = fault.Message;
        }
        catch (Exception)
        {
            // even the message of a foreign exception is foreign code
            message = "no message";
        }

        return $"{OnOneLine(message).TrimEnd('.')} ({fault.GetType().Name})";
    }

    /// <summary>Foreign text, shortened and without anything a terminal would obey.</summary>
    public static string OnOneLine(string text) =>
        new string([.. text.Take(LongestMessage).Select(letter => char.IsControl(letter) || char.GetUnicodeCategory(letter) == UnicodeCategory.Format ? ' ' : letter)]).Trim();
}
