package evenrise.solver.intake;

import evenrise.model.electrical.breaker.BranchRating;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Practice;
import evenrise.model.project.TripCurve;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The breaker of a piece, by what it draws and by its outlet; of motors and transformers by the tables for them. */
final class BreakerSizing {
    private static final double LARGEST_BREAKER_AMPS = 63;

    /** What carries a motor or a transformer may be larger than what carries as much of anything else. */
    private static final double LARGEST_OF_MOTORS_AMPS = 125;

    private final Mapping mapping;
    private final Practice practice;
    private final Notices notices;

    BreakerSizing(Mapping mapping, Notices notices) {
        this.mapping = mapping;
        this.practice = mapping.practiceOfRatings();
        this.notices = notices;
    }

    /**
     * @param amps rating
     * @param isAlone whether nothing else goes on it
     */
    record Breaker(double amps, Optional<TripCurve> curve, boolean isAlone) {}

    /** Empty where no breaker is right, which is a problem that is noted. */
    Optional<Breaker> of(Item item) {
        boolean isMotor = item.gear() == Gear.MOTOR;
        boolean isTransformer = item.gear() == Gear.TRANSFORMER;
        if (practice == Practice.NEC && isMotor) {
            return motor(item);
        }
        if (practice == Practice.NEC && isTransformer) {
            return transformer(item);
        }
        Optional<TripCurve> curve = mapping.curveOfBreakers();
        if ((isMotor || isTransformer)
                && practice == Practice.IEC
                && mapping.curve().isEmpty()) {
            curve = Optional.of(TripCurve.D);
            say(
                    item,
                    "a breaker of band D, as " + (isMotor ? "a motor starts" : "a transformer is switched on")
                            + "; its rating follows the load (IEC 60364-4-43 clause 433.1)");
        }
        boolean isAlone = isMotor
                || isTransformer
                || item.service() == Service.ASKED
                || item.service() == Service.LIFE_SAFETY_HERE;
        return byLoad(item, curve, isAlone);
    }

    private Optional<Breaker> byLoad(Item item, Optional<TripCurve> curve, boolean isAlone) {
        double most = Math.min(LARGEST_BREAKER_AMPS, item.outletAmps().orElse(LARGEST_BREAKER_AMPS));
        OptionalDouble rating = BranchRating.carrying(practice, item.amps(), mapping.continuousFraction());
        if (rating.isEmpty() || rating.getAsDouble() > most) {
            String why = item.outletAmps().isPresent()
                    ? String.format(
                            Locale.ROOT,
                            "its outlet of %s A allows no breaker that carries it. Maybe it has an outlet of %s A.",
                            plain(item.outletAmps().getAsDouble()),
                            rating.isPresent() ? plain(rating.getAsDouble()) : "a larger one, or a connection")
                    : String.format(
                            Locale.ROOT,
                            "no breaker up to %.0f A carries that. Maybe it has a feed of its own, or its breaker is to be"
                                    + " stated.",
                            LARGEST_BREAKER_AMPS);
            problem(item, String.format(Locale.ROOT, "runs at %.2f A; %s", item.amps(), why));
            return Optional.empty();
        }
        double usual = mapping.usualBreakerAmps();
        if (rating.getAsDouble() > usual) {
            return Optional.of(new Breaker(rating.getAsDouble(), curve, true));
        }
        double capped =
                usual <= most ? usual : StandardRatings.atMost(practice, most).orElse(rating.getAsDouble());
        return Optional.of(new Breaker(capped, curve, isAlone));
    }

    private Optional<Breaker> motor(Item item) {
        double rating = BranchRating.ofMotor(item.amps()).orElse(Double.POSITIVE_INFINITY);
        if (rating > LARGEST_OF_MOTORS_AMPS) {
            return tooLarge(item, "a motor of", BranchRating.MOTOR_RATIO * item.amps());
        }
        say(
                item,
                String.format(
                        Locale.ROOT,
                        "a motor of %.2f A, alone on a breaker of %.0f A by NEC 430.52(C)(1)",
                        item.amps(),
                        rating));
        notices.guess(
                "a motor's breaker is of 250 % of its current, and the next standard rating (NEC 430.52(C)(1)). Where"
                        + " a list states no horsepower its own current counts; 430.6(A)(1) goes by the tables' instead."
                        + " Overload protection (430.32) stands by the motor, and conductors carry 125 % (430.22)");
        return Optional.of(new Breaker(rating, mapping.curve(), true));
    }

    private Optional<Breaker> transformer(Item item) {
        OptionalDouble allowed = BranchRating.ofTransformer(item.amps());
        double least = BranchRating.carrying(practice, item.amps(), mapping.continuousFraction())
                .orElse(Double.POSITIVE_INFINITY);
        if (least > LARGEST_OF_MOTORS_AMPS) {
            return tooLarge(item, "a transformer of", least);
        }
        double rating = allowed.isPresent() && allowed.getAsDouble() >= least ? allowed.getAsDouble() : least;
        say(
                item,
                String.format(
                        Locale.ROOT,
                        "a transformer of %.2f A on a breaker of %.0f A of its own, %s",
                        item.amps(),
                        rating,
                        allowed.isPresent() && rating == allowed.getAsDouble()
                                ? "by NEC table 450.3(B), its secondary without protection"
                                : String.format(
                                        Locale.ROOT,
                                        "more than NEC table 450.3(B) allows its primary alone: it needs a fuse, or"
                                                + " protection of its secondary, which allows %.1f A",
                                        BranchRating.TRANSFORMER_WITH_SECONDARY_RATIO * item.amps())));
        return Optional.of(new Breaker(rating, mapping.curve(), true));
    }

    private Optional<Breaker> tooLarge(Item item, String what, double needed) {
        problem(
                item,
                String.format(
                        Locale.ROOT,
                        "is %s %.2f A, whose breaker would be of %.0f A or more, of at most %.0f. Maybe it has a feed"
                                + " of its own.",
                        what,
                        item.amps(),
                        needed,
                        LARGEST_OF_MOTORS_AMPS));
        return Optional.empty();
    }

    private void say(Item item, String text) {
        notices.add(new Notice(Notice.Kind.GUESS, item.place(), "'" + item.name() + "': " + text));
    }

    private void problem(Item item, String text) {
        notices.add(new Notice(Notice.Kind.PROBLEM, item.place(), "a piece of '" + item.name() + "' " + text));
    }

    private static String plain(double amps) {
        return amps == Math.rint(amps) ? String.valueOf((long) amps) : String.valueOf(amps);
    }
}
