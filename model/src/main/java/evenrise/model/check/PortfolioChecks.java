package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.portfolio.Portfolio;
import evenrise.model.portfolio.ValueChange;
import evenrise.model.portfolio.Variant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Finds what makes a portfolio none of ours. */
public final class PortfolioChecks {
    private static final String NAME = "[A-Za-z0-9][A-Za-z0-9-]{0,63}";

    private PortfolioChecks() {}

    /** The format is ours, variants are named apart by names that files can have, and each change says one thing. */
    public static List<Objection> errors(Portfolio portfolio) {
        if (!FormatVersion.isRead(portfolio.format(), Portfolio.FORMAT)) {
            return List.of(Identity.format(portfolio.format(), Portfolio.FORMAT));
        }
        List<Objection> found = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (int i = 0; i < portfolio.variants().size(); i++) {
            Variant variant = portfolio.variants().get(i);
            String place = "/variants/" + i;
            if (!variant.name().matches(NAME)) {
                found.add(Objection.error(
                        place + "/name",
                        Shown.quoted(variant.name()),
                        "1 to 64 letters, digits and hyphens, a letter or digit first",
                        ""));
            } else if (!names.add(variant.name().toLowerCase(Locale.ROOT))) {
                found.add(Objection.error(
                        place + "/name", Shown.quoted(variant.name()) + " again", "a name of its own for each", ""));
            }
            for (int j = 0; j < variant.changes().size(); j++) {
                change(place + "/changes/" + j, variant.changes().get(j), found);
            }
        }
        return found;
    }

    private static void change(String place, ValueChange change, List<Objection> found) {
        if (!change.at().startsWith("/")) {
            found.add(Objection.error(
                    place + "/at", Shown.quoted(change.at()), "a JSON pointer, which begins with /", ""));
        }
        if (change.ways() != 1) {
            found.add(Objection.error(
                    place,
                    change.ways() == 0 ? "without a new value" : "given several new values",
                    "one of number, text, factor",
                    ""));
        }
    }
}
