using CsCheck;
using SpecLint.Book;
using SpecLint.Profile;
using SpecLint.Reading;

namespace SpecLint.Tests.Service;

/// <summary>Use-by dates against an oracle that turns the leaves of a calendar one by one, with its own lengths of months.</summary>
public sealed class LastDayTests
{
    private static readonly Gen<CalendarDate> Days = Gen.Int[0, 60_000].Select(n => CalendarDate.Of(1970, 1, 1)!.Value.AddDays(n));

    private static CalendarDate Last(CalendarDate from, double days, params FrozenTime[] frozen) => LotLife.LastDay(from, days, frozen, from.AddDays(5000));

    private static CalendarDate Day(int year, int month, int day) => CalendarDate.Of(year, month, day)!.Value;

    private static (int Year, int Month, int Day) Next((int Year, int Month, int Day) leaf)
    {
        bool leap = (leaf.Year % 4 == 0 && leaf.Year % 100 != 0) || leaf.Year % 400 == 0;
        int length = leaf.Month switch { 2 => leap ? 29 : 28, 4 or 6 or 9 or 11 => 30, _ => 31 };
        if (leaf.Day < length) return (leaf.Year, leaf.Month, leaf.Day + 1);
        return leaf.Month == 12 ? (leaf.Year + 1, 1, 1) : (leaf.Year, leaf.Month + 1, 1);
    }

    [Fact]
    public void The_day_made_is_day_1_and_every_leaf_of_the_calendar_counts() =>
        Gen.Select(Gen.Int[1999, 2104], Gen.Int[1, 12], Gen.Int[1, 28], Gen.Int[1, 120]).Sample((year, month, day, days) =>
        {
            var leaf = (year, month, day);
            for (int i = 1; i < days; i++) leaf = Next(leaf);
            Assert.Equal($"{leaf.year:0000}-{leaf.month:00}-{leaf.day:00}", Last(Day(year, month, day), days).ToString());
        });

    [Fact]
    public void A_time_in_the_freezer_moves_the_last_day_by_its_length() =>
        Gen.Select(Days, Gen.Int[2, 40], Gen.Int[0, 60], Gen.Int[0, 90]).Sample((from, days, start, length) =>
        {
            int begins = Math.Min(start, days - 1);
            var frozen = new FrozenTime(from.AddDays(begins), from.AddDays(begins + length), default);
            Assert.Equal(days - 1 + length, Last(from, days, frozen).DaysSince(from));
        });

    [Fact]
    public void Freezing_never_brings_the_last_day_forward_and_overlaps_count_once() =>
        Gen.Select(Days, Gen.Int[1, 30], Gen.Int[0, 40], Gen.Int[0, 40]).Sample((from, days, start, length) =>
        {
            var frozen = new FrozenTime(from.AddDays(start), from.AddDays(start + length), default);
            var once = Last(from, days, frozen);
            Assert.True(once >= Last(from, days));
            Assert.Equal(once, Last(from, days, frozen, frozen));
        });

    [Fact]
    public void What_is_frozen_now_stands_still_up_to_the_day_of_the_check()
    {
        var made = Day(2026, 11, 1);
        var open = new FrozenTime(Day(2026, 11, 3), null, default);
        Assert.Equal(Day(2026, 11, 23), LotLife.LastDay(made, 5, [open], Day(2026, 11, 21)));
    }

    [Theory]
    [InlineData(2026, 1, 31, 2, "2026-02-01")]
    [InlineData(2024, 2, 28, 2, "2024-02-29")]
    [InlineData(2026, 2, 28, 2, "2026-03-01")]
    [InlineData(2100, 2, 28, 2, "2100-03-01")]
    [InlineData(2026, 12, 31, 7, "2027-01-06")]
    [InlineData(2026, 3, 28, 3, "2026-03-30")]
    [InlineData(2026, 10, 24, 3, "2026-10-26")]
    public void Month_ends_leap_days_and_the_change_of_the_clocks(int year, int month, int day, int days, string last) =>
        Assert.Equal(last, Last(Day(year, month, day), days).ToString());

    [Theory]
    [InlineData(0.2, 0)]
    [InlineData(1, 0)]
    [InlineData(1.5, 1)]
    [InlineData(7, 6)]
    public void A_part_of_a_day_counts_as_the_day_it_begins(double days, int later) =>
        Assert.Equal(later, Last(Day(2026, 11, 25), days).DaysSince(Day(2026, 11, 25)));

    /// <summary>Fliegel and Van Flandern, A machine algorithm for processing calendar dates, Communications of the ACM 11 (1968), p. 657.</summary>
    private static long Julian(int i, int j, int k) =>
        k - 32075 + (1461L * (i + 4800 + ((j - 14) / 12)) / 4) + (367L * (j - 2 - ((j - 14) / 12 * 12)) / 12) - (3L * ((i + 4900 + ((j - 14) / 12)) / 100) / 4);

    [Fact]
    public void Days_between_two_dates_are_those_of_the_published_formula() =>
        Gen.Select(Gen.Int[1583, 9999], Gen.Int[1, 12], Gen.Int[1, 31], Gen.Int[1583, 9999], Gen.Int[1, 12], Gen.Int[1, 31]).Sample((y1, m1, d1, y2, m2, d2) =>
        {
            if (CalendarDate.Of(y1, m1, d1) is not { } a || CalendarDate.Of(y2, m2, d2) is not { } b) return;
            int apart = b.DaysSince(a);
            Assert.Equal(Julian(y2, m2, d2) - Julian(y1, m1, d1), apart);
            Assert.Equal(b, a.AddDays(apart));
            Assert.Equal($"{y2:0000}-{m2:00}-{d2:00}", a.AddDays(apart).ToString());
            Assert.Equal(b, CalendarDate.Parse(b.ToString()));
            Assert.Equal(apart > 0, b > a);
        });

    /// <summary>Zones whose clocks change by an hour, by half an hour, in the south, and not at all; one has 13 hours on Greenwich.</summary>
    private static readonly TimeZoneInfo[] Zones =
        [.. new[] { "Europe/Dublin", "America/New_York", "America/Sao_Paulo", "Australia/Lord_Howe", "Pacific/Apia", "Asia/Kolkata", "Pacific/Kiritimati" }.Select(TimeZoneInfo.FindSystemTimeZoneById)];

    [Fact]
    public void No_change_of_clocks_in_any_zone_moves_the_last_day() =>
        Gen.Select(
            Gen.Int[0, Zones.Length - 1].Select(i => Zones[i]), Gen.Int[2013, 2040], Gen.Int[0, 364], Gen.Int[1, 200]).Sample((zone, year, dayOfYear, days) =>
        {
            // Whole days of 24 hours from noon: an hour more or less stays within the day on the wall.
            var noon = new DateTime(year, 1, 1, 12, 0, 0, DateTimeKind.Unspecified).AddDays(dayOfYear);
            var wall = TimeZoneInfo.ConvertTimeFromUtc(TimeZoneInfo.ConvertTimeToUtc(noon, zone).AddHours(24 * (days - 1)), zone);
            Assert.Equal(Day(wall.Year, wall.Month, wall.Day), Last(Day(noon.Year, noon.Month, noon.Day), days));
        });

    [Fact]
    public void The_ends_of_the_calendar_hold()
    {
        Assert.Equal("9999-12-31", Last(Day(9999, 12, 30), 400).ToString());
        Assert.Equal("9999-12-31", Day(9999, 12, 31).AddDays(int.MaxValue).ToString());
        Assert.Equal("0001-01-01", Day(1, 1, 1).AddDays(int.MinValue).ToString());
        Assert.Equal("9999-12-31", LotLife.LastDay(Day(9999, 12, 1), 40, [new FrozenTime(Day(9999, 12, 2), null, default)], Day(9999, 12, 31)).ToString());
    }
}
