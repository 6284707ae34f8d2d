package evenrise.solver.intake;

import evenrise.model.project.Role;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Tells a role by the words of a role column or of a name. */
final class RoleWords {
    private static final Pattern AMPLIFIER = Pattern.compile(
            "\\b(amp|amps|amplifier|amplifiers|powered|endstufe|endstufen|verst[aä]rker|ampli|amplificateur|amplificador|subwoofer|loudspeaker|speaker)\\b");
    private static final Pattern PROCESSING = Pattern.compile(
            "\\b(dsp|processor|processors|processing|network|switch|router|console|mixer|mixing|matrix|clock|server|stage ?box|receiver|transmitter|intercom|controller|control|computer|recorder|prozessor|pult|netzwerk|steuerung|processeur|r[eé]seau|serveur|procesador|red|consola)\\b");
    private static final Pattern AUXILIARY = Pattern.compile(
            "\\b(aux|auxiliary|projector|screen|display|video|wall|light|lighting|fixture|motor|hoist|fan|charger|lamp|monitor|outlet|socket|printer|beamer|licht|leinwand|projecteur|[eé]cran|lumi[eè]re|proyector|pantalla|luz)\\b");

    private RoleWords() {}

    static Optional<Role> of(String text) {
        String plain = text.toLowerCase(Locale.ROOT).replace('-', ' ').replace('_', ' ');
        if (AMPLIFIER.matcher(plain).find()) {
            return Optional.of(Role.AMPLIFIER);
        } else if (PROCESSING.matcher(plain).find()) {
            return Optional.of(Role.PROCESSING);
        }
        return AUXILIARY.matcher(plain).find() ? Optional.of(Role.AUXILIARY) : Optional.empty();
    }
}
