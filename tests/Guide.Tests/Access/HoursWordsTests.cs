using Xunit;

namespace Foreshore.Guide.Access;

public class HoursWordsTests
{
    [Theory]
    [InlineData("open", null, "at any hour")]
    [InlineData("08:00-18:00", null, "daily 08:00–18:00")]
    [InlineData("May-Oct 08:00-18:00; Nov-Apr on request", "the ferryman, 207 555 0142", "May–October daily 08:00–18:00; November–April on request: ask the ferryman, 207 555 0142")]
    [InlineData("Mon-Fri 06:30-17:00; Sat,Sun closed", null, "Monday to Friday 06:30–17:00; Saturday and Sunday closed")]
    [InlineData("15 May-14 Sep Mon,Wed-Fri 18:00-02:00; closed", null, "15 May – 14 September Monday and Wednesday to Friday 18:00–02:00 of the next day; closed")]
    [InlineData("sunrise-sunset or by permit", "the refuge office", "daily sunrise to sunset, otherwise by permit: ask the refuge office")]
    [InlineData("30 min before sunrise-90 min after sunset", null, "daily 30 min before sunrise to 1 h 30 min after sunset")]
    [InlineData("May-Oct Sat 09:00-12:00", null, "May–October Saturday 09:00–12:00; closed on all other dates")]
    [InlineData("Feb by permit; 16:00-24:00", null, "February by permit only; daily 16:00–24:00")]
    public void Hours_read_as_plain_English(string notation, string? ask, string words) => Assert.Equal(words, HoursNotation.Read(notation).Words(ask));

    [Theory]
    [InlineData("", null, "not known")]
    [InlineData("", "the harbour office", "not known: ask the harbour office")]
    [InlineData("May-Oct first 05:30 last 20:15 every 45; Nov on request; no sailings", "the boatman", "May–October daily 05:30–20:15, every 45 min; November on request: ask the boatman; no sailings")]
    [InlineData("Sat,Sun 08:00 12:00 17:30", null, "Saturday and Sunday 08:00, 12:00 and 17:30; no sailings on all other dates")]
    [InlineData("first 07:00 last 18:30; agreed 2026-11-28 14:15", null, "daily first 07:00, last 18:30, none counted between; agreed: 28 Nov 2026 14:15")]
    public void Sailings_read_as_plain_English(string notation, string? ask, string words) => Assert.Equal(words, SailingsNotation.Read(notation).Words(ask));
}
