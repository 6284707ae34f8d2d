package evenrise.solver.intake;

import evenrise.model.project.Role;
import evenrise.solver.table.HeaderWords;
import java.util.Optional;
import java.util.regex.Pattern;

/** Tells a role by the words of a role column or of a name. */
final class RoleWords {
    private static final Pattern AMPLIFIER = Pattern.compile(
            "\\b(amp|amplifier|powered|subwoofer|loudspeaker|speaker|ampli|amplificateur|amplificador|etapa|altavoz)(e?s)?\\b"
                    + "|\\b\\w*(endstufe|verstarker)n?\\b");
    private static final Pattern PROCESSING = Pattern.compile(
            "\\b(dsp|processor|processing|network|switch|router|console|mixer|mixing|mixing desk|sound desk|matrix|clock|server|stage"
                    + " ?box|receiver|transmitter|rx|tx|wireless|iem|intercom|controller|control|computer|recorder|netzwerk"
                    + "|steuerung|processeur|reseau|serveur|procesador|red|consola)(e?s)?\\b"
                    + "|\\b\\w*(pult|prozessor|rechner|empfanger)e?n?\\b");
    private static final Pattern AUXILIARY = Pattern.compile(
            "\\b(aux|auxiliary|projector|videoprojecteur|screen|display|tv|video|wall|light|lighting|fixture|spot|dimmer|hazer"
                    + "|motor|hoist|winch|fan|heater|charger|lamp|monitor|outlet|receptacle|socket|printer|beamer|licht|leinwand"
                    + "|projecteur|gradateur|ecran|lumiere|treuil|proyector|pantalla|foco|polipasto|luz)s?\\b"
                    + "|\\b\\w*(scheinwerfer|leuchte|kettenzug|prospektzug|winde)n?\\b");

    private RoleWords() {}

    static Optional<Role> of(String text) {
        String plain = HeaderWords.folded(text).replace('-', ' ').replace('_', ' ');
        if (AMPLIFIER.matcher(plain).find()) {
            return Optional.of(Role.AMPLIFIER);
        } else if (PROCESSING.matcher(plain).find()) {
            return Optional.of(Role.PROCESSING);
        }
        return AUXILIARY.matcher(plain).find() ? Optional.of(Role.AUXILIARY) : Optional.empty();
    }
}
