package evenrise.solver.intake;

import evenrise.model.project.PhaseSystem;
import evenrise.solver.table.HeaderWords;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a voltage, as a list writes it, connects to a supply: from a line to neutral one pole, between two lines two, three
 * where the list says three phases.
 *
 * @param poles 0 where it is a problem
 * @param assumed what was taken for granted, for every row of the kind; empty where nothing was
 * @param question what to ask about this row alone; empty where nothing
 * @param problem why it cannot be connected; empty where it can
 */
record Connection(int poles, String assumed, String question, String problem) {
    /** Within so much of the supply, gear runs as it is labelled: 115 V on 120 V, 240 V on 230 V. */
    private static final double SILENT = 0.055;

    /** Utilization voltages stray by as much (IEC 60038: ±10 %; from memory); beyond, gear is for another supply. */
    private static final double ASKED = 0.1;

    /** Ratios of voltages between lines and to neutral that count as √3. */
    private static final double STAR_TOLERANCE = 0.015;

    private static final String NUMBER = "([0-9]+(?:[.,][0-9]+)?)";
    private static final Pattern HERTZ = Pattern.compile("[,;/@]?[456][0-9](?:[-/][56]0)?hz");
    private static final Pattern THREE = Pattern.compile(
            "3~|~3|3ph(ase[ns]?)?|3-ph(ase)?|three-?phases?|3-?phasig|dreiphasig|drehstrom|triphase|trifasic[oa]|tri(?=[+/ ]?n\\b|$|\\+)|3p(?![a-z0-9])|3/n(/pe)?|3n~|3f(?![a-z0-9])|3[x×](?=[0-9])");
    private static final Pattern ONE = Pattern.compile(
            "1~|~1|1ph(ase)?|1-ph(ase)?|single-?phase|einphasig|monophase|monofasic[oa]|mono(?=$|\\+)|1p(?![a-z0-9])|1f(?![a-z0-9])|1/n(/pe)?");
    private static final Pattern VOLTS = Pattern.compile(
            "~?" + NUMBER + "(k?v)?(?:ac)?(?:([-–—/]|to|bis|y/?|a|±)" + NUMBER + ")?(k?v)?(?:ac|rms|eff)?~?[,;]?");

    private static final Pattern STROKES =
            Pattern.compile("([0-9]{2,3}(?:y?/[0-9]{2,3})?)v?[/-]([13])(?:ph|p|ø|φ)?(?:[/-][56]0(?:hz)?)?");

    private static final String NO_VOLTAGE = "one pole where no voltage is stated";

    /** Longer texts are no voltages; patterns need not look at them. */
    private static final int LONGEST = 120;

    static Connection of(String written, String usualUnit, PhaseSystem system, double phaseVolts) {
        return of(written, usualUnit, system, phaseVolts, 0);
    }

    /** @param polesOfBreaker decide where a voltage fits several numbers of poles; 0 where the list does not state them */
    static Connection of(String written, String usualUnit, PhaseSystem system, double phaseVolts, int polesOfBreaker) {
        if (written.length() > LONGEST) {
            return problem("'" + CellReader.cut(written) + "' is no voltage. Maybe another column holds it.");
        }
        String text = HeaderWords.folded(written).replaceAll("\\s", "");
        if (text.matches("[-–—]*") || LeftOpen.is(written)) {
            return new Connection(1, NO_VOLTAGE, "", "");
        }
        if (isDirectCurrent(written)) {
            return problem("'" + written + "' is direct current. Maybe list the power supply that makes it.");
        }
        Optional<String> other = OtherSystem.named(HeaderWords.folded(written).strip());
        if (other.isPresent()) {
            return problem(OtherSystem.problem(written, other.get()));
        }
        String bare = phaseAndHertz(HERTZ.matcher(text).replaceAll(""))
                .replaceAll("(?<=^|pe|n|[~ ,;/])ac(?=[0-9])", "")
                .replaceAll("[-,;/+]?(?<![0-9])[345]-?w(ire)?|[-,;/+]?(gnd|ground)$", "")
                .replaceAll("(?<=[0-9v,;/+])([123])[øφ]", "$1ph")
                .replaceAll("(?<=v[,;/]?)2(p|ph|pole|~)$|(?<=v[,;/]?)2-pole$", "1ph");
        boolean saysThree = THREE.matcher(bare).find();
        bare = THREE.matcher(bare).replaceAll("");
        boolean saysOne = ONE.matcher(bare).find();
        bare = ONE.matcher(bare).replaceAll("").replaceAll("[+/](n|pe|n[+/]pe)$|^[,;/+(]+|[,;/+)]+$", "");
        Supplied supplied = new Supplied(written, system, phaseVolts, polesOfBreaker);
        if (saysThree && bare.isEmpty()) {
            return supplied.three(0, Double.MAX_VALUE, false);
        }
        if (saysOne && bare.isEmpty()) {
            return new Connection(1, NO_VOLTAGE, "", "");
        }
        Matcher matcher = VOLTS.matcher(bare);
        if (!matcher.matches() || saysThree && saysOne) {
            return problem("'" + written + "' is no voltage. Maybe 120, 208, 100-240, 208Y/120 or 3~ 400.");
        }
        String unit = matcher.group(5) != null ? matcher.group(5) : matcher.group(2);
        double scale = (unit == null ? usualUnit : unit).startsWith("k") ? 1000 : 1;
        double first = scale * volts(matcher.group(1));
        double second = matcher.group(4) == null ? first : scale * volts(matcher.group(4));
        double low = Math.min(first, second);
        double high = Math.max(first, second);
        if (low <= 0) {
            return problem("'" + written + "' is no voltage above zero.");
        }
        String joined = matcher.group(3) == null ? "" : matcher.group(3);
        boolean isPair = joined.equals("/") || joined.startsWith("y");
        boolean isStar = isPair && Math.abs(high / low / Math.sqrt(3) - 1) <= STAR_TOLERANCE;
        if (saysThree && isPair && OtherSystem.isHighLegPair(low, high)) {
            return problem(OtherSystem.problem(written, "a delta with a high leg"));
        }
        if (saysThree) {
            return supplied.three(low, high, isPair);
        }
        if (isStar && !saysOne && system == PhaseSystem.THREE_PHASE) {
            return supplied.star(low, high);
        }
        return isPair ? supplied.either(low, high) : supplied.range(low, high);
    }

    /** American lists write voltage, phases and frequency with strokes: {@code 208/3/60}. */
    private static String phaseAndHertz(String text) {
        Matcher strokes = STROKES.matcher(text);
        return strokes.matches() ? strokes.group(1) + "v" + strokes.group(2) + "ph" : text;
    }

    /** No breaker of such a supply feeds it. */
    static boolean isDirectCurrent(String written) {
        return written.length() <= LONGEST
                && HeaderWords.folded(written)
                        .replaceAll("\\s", "")
                        .matches(".*[0-9]k?v?\\(?dc\\b.*|\\(?dc[0-9].*|.*⎓.*");
    }

    private static double volts(String number) {
        return Double.parseDouble(number.replace(',', '.'));
    }

    private static Connection problem(String text) {
        return new Connection(0, "", "", text);
    }

    /** What the supply has for it. */
    private record Supplied(String written, PhaseSystem system, double phase, int polesOfBreaker) {
        private double between() {
            return switch (system) {
                case THREE_PHASE -> phase * Math.sqrt(3);
                case SPLIT_PHASE -> 2 * phase;
                case SINGLE_PHASE -> Double.POSITIVE_INFINITY;
            };
        }

        /** The supply's voltage over the nearest that the gear is made for, less 1. */
        private static double above(double supply, double low, double high) {
            return supply / Math.max(low, Math.min(high, supply)) - 1;
        }

        Connection three(double low, double high, boolean isPair) {
            if (system != PhaseSystem.THREE_PHASE) {
                return problem("'" + written + "' asks for three phases; the supply has not.");
            }
            double above = isPair ? aboveEither(between(), low, high) : above(between(), low, high);
            return fits(3, "", above, between());
        }

        /** A pair such as 120/208 names a system of three phases, but not how many of them a piece uses. */
        Connection star(double low, double high) {
            double above = above(phase, low, low);
            double between = above(between(), low, low);
            if (Math.abs(above) <= ASKED && (polesOfBreaker == 1 || polesOfBreaker == 2)) {
                return fits(polesOfBreaker, "", above, polesOfBreaker == 1 ? phase : between());
            }
            return Math.abs(above) > ASKED && Math.abs(between) <= ASKED
                    ? fits(2, "", between, between())
                    : fits(
                            3,
                            "a pair of star voltages, such as 120/208, counts for three poles: a piece on one or two"
                                    + " draws more in each",
                            above,
                            phase);
        }

        Connection either(double low, double high) {
            String assumed = "of two voltages the one that the supply has counts, to neutral before between lines";
            double one = aboveEither(phase, low, high);
            double two = aboveEither(between(), low, high);
            if (Math.abs(one) <= ASKED && !(polesOfBreaker == 2 && Math.abs(two) <= ASKED)) {
                return fits(1, assumed, one, phase);
            }
            return Math.abs(two) <= ASKED ? fits(2, assumed, two, between()) : range(low, high);
        }

        Connection range(double low, double high) {
            double one = above(phase, low, high);
            double two = system == PhaseSystem.SINGLE_PHASE ? Double.POSITIVE_INFINITY : above(between(), low, high);
            if (polesOfBreaker == 3 && system == PhaseSystem.THREE_PHASE && Math.abs(two) <= Math.abs(one)) {
                return fits(3, "three poles, as its breaker has", two, between());
            }
            if (polesOfBreaker == 2 && low < high && Math.abs(two) <= SILENT) {
                return fits(2, "", two, between());
            }
            if (Math.abs(one) <= SILENT || Math.abs(one) <= Math.abs(two)) {
                boolean isRange = low < high && Math.abs(two) <= SILENT;
                return fits(
                        1, isRange ? "a range that holds the voltage to neutral counts for one pole" : "", one, phase);
            }
            if (low < high && Math.abs(two) <= SILENT) {
                return fits(
                        2,
                        "a range that holds the voltage between lines, as 208-240 does 208 V, counts for two poles",
                        two,
                        between());
            }
            boolean mayBeThree = system == PhaseSystem.THREE_PHASE && phase > 200;
            return fits(
                    2,
                    mayBeThree
                            ? "a voltage between lines counts for two poles; three phases where the list says 3~"
                            : "",
                    two,
                    between());
        }

        private Connection fits(int poles, String assumed, double above, double volts) {
            double percent = 100 * Math.abs(above);
            String stray =
                    String.format(Locale.ROOT, "%.1f %% %s than it is made for", percent, above > 0 ? "more" : "less");
            if (Math.abs(above) <= SILENT) {
                return new Connection(poles, assumed, "", "");
            }
            if (Math.abs(above) <= ASKED) {
                return new Connection(
                        poles,
                        assumed,
                        String.format(
                                Locale.ROOT, "gear for '%s' gets %.0f V, %s: is that allowed?", written, volts, stray),
                        "");
            }
            return problem(String.format(
                    Locale.ROOT,
                    "'%s', the supply has %.0f V to neutral%s. Maybe it takes a range of voltages (100-240), or needs a"
                            + " transformer or a panel of its own.",
                    written,
                    phase,
                    system == PhaseSystem.SINGLE_PHASE
                            ? ""
                            : String.format(Locale.ROOT, " and %.0f V between lines", between())));
        }

        private static double aboveEither(double supply, double low, double high) {
            double one = above(supply, low, low);
            double other = above(supply, high, high);
            return Math.abs(one) <= Math.abs(other) ? one : other;
        }
    }
}
