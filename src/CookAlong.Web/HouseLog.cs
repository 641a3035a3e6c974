namespace CookAlong.Web;

static class HouseLog
{
    /// <summary>One line an entry on the terminal, and of the libraries only what somebody should act on, so that the one address to open is seen.</summary>
    public static void AddHouseLog(this ILoggingBuilder logging)
    {
        logging.ClearProviders();
        logging.AddSimpleConsole(console =>
        {
            console.SingleLine = true;
            console.TimestampFormat = "HH:mm:ss ";
        });
        logging.AddFilter("Microsoft", LogLevel.Warning);
        // That the server cannot listen is said in a sentence; of a background task that fails it says the same again as critical.
        logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.Critical);
        // It warns that the keys lie unencrypted on the disk: they are in the data folder, which is closed to other users.
        logging.AddFilter("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogLevel.Error);
        logging.AddFilter("Microsoft.AspNetCore.DataProtection.Repositories", LogLevel.Error);
    }
}
