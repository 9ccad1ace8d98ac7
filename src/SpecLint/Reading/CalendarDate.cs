namespace SpecLint.Reading;

/// <summary>A day of the Gregorian calendar, without time or zone.</summary>
/// <remarks>Both target frameworks share it: <c>DateOnly</c> is missing from netstandard2.0.</remarks>
public readonly record struct CalendarDate : IComparable<CalendarDate>
{
    private static readonly DateTime Epoch = new(1970, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    private static readonly int First = (int)(DateTime.MinValue - Epoch).TotalDays;
    private static readonly int Last = (int)(DateTime.MaxValue.Date - Epoch).TotalDays;

    private CalendarDate(int dayNumber) => DayNumber = dayNumber;

    /// <summary>Days since 1970-01-01.</summary>
    public int DayNumber { get; }

    /// <summary>The day of a year, month and day; <see langword="null"/> where there is no such day.</summary>
    public static CalendarDate? Of(int year, int month, int day)
    {
        if (year is < 1 or > 9999 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month)) return null;
        return new CalendarDate((int)(new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Utc) - Epoch).TotalDays);
    }

    /// <summary>Reads <c>YYYY-MM-DD</c> (ISO 8601); <see langword="null"/> for anything else.</summary>
    public static CalendarDate? Parse(string text)
    {
        if (text.Length != 10 || text[4] != '-' || text[7] != '-') return null;
        int year = Digits(text, 0, 4), month = Digits(text, 5, 2), day = Digits(text, 8, 2);
        return year < 0 || month < 0 || day < 0 ? null : Of(year, month, day);
    }

    /// <summary>The day that lies a number of days later (or earlier); beyond the years 1 to 9999 the last of them.</summary>
    public CalendarDate AddDays(int days) => new((int)Math.Min(Last, Math.Max(First, (long)DayNumber + days)));

    /// <summary>The same day of the next year (of 29 February the 28th); the last day of the year 9999 where that lies beyond it.</summary>
    public CalendarDate NextYear()
    {
        var day = Epoch.AddDays(DayNumber);
        return day.Year == 9999 ? new CalendarDate(Last) : new CalendarDate((int)(day.AddYears(1) - Epoch).TotalDays);
    }

    /// <inheritdoc/>
    public int CompareTo(CalendarDate other) => DayNumber.CompareTo(other.DayNumber);

    /// <summary>Days from another day to this one.</summary>
    public int DaysSince(CalendarDate other) => DayNumber - other.DayNumber;

    /// <summary>Earlier.</summary>
    public static bool operator <(CalendarDate a, CalendarDate b) => a.DayNumber < b.DayNumber;

    /// <summary>Later.</summary>
    public static bool operator >(CalendarDate a, CalendarDate b) => a.DayNumber > b.DayNumber;

    /// <summary>Not later.</summary>
    public static bool operator <=(CalendarDate a, CalendarDate b) => a.DayNumber <= b.DayNumber;

    /// <summary>Not earlier.</summary>
    public static bool operator >=(CalendarDate a, CalendarDate b) => a.DayNumber >= b.DayNumber;

    /// <summary><c>YYYY-MM-DD</c>.</summary>
    public override string ToString() => Epoch.AddDays(DayNumber).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static int Digits(string text, int start, int count)
    {
        int value = 0;
        for (int i = start; i < start + count; i++)
        {
            if (text[i] is < '0' or > '9') return -1;
            value = (value * 10) + (text[i] - '0');
        }

        return value;
    }
}
