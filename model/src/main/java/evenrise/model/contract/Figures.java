package evenrise.model.contract;

import java.util.OptionalDouble;

/** Figures with their units in words for people, the same on every machine; a room chooses how fine its own are. */
public enum Figures {
    WHOLE(0),
    TENTHS(1),
    HUNDREDTHS(2),
    /** Without zeros at the end. */
    THOUSANDTHS(3) {
        @Override
        String text(double value) {
            return Decimals.toThousandths(value);
        }

        @Override
        String text(double value, double beside) {
            return Decimals.toThousandths(value, beside);
        }
    };

    private final int decimals;

    Figures(int decimals) {
        this.decimals = decimals;
    }

    String text(double value) {
        return Decimals.fixed(value, decimals);
    }

    String text(double value, double beside) {
        return Decimals.apart(value, beside, decimals);
    }

    public String amps(double amps) {
        return in("A", amps);
    }

    /** A current beside the one that it is held against: as many digits as tell the two apart. */
    public String amps(double amps, double beside) {
        return text(amps, beside) + " A";
    }

    public String percent(double percent) {
        return in("%", percent);
    }

    /** A percentage beside the one that it is held against. */
    public String percent(double percent, double beside) {
        return text(percent, beside) + " %";
    }

    public String seconds(double seconds) {
        return in("s", seconds);
    }

    /** A time beside the one that it is held against. */
    public String seconds(double seconds, double beside) {
        return text(seconds, beside) + " s";
    }

    public String seconds(OptionalDouble seconds) {
        return seconds.isPresent() ? seconds(seconds.getAsDouble()) : "no time";
    }

    /** A number without a unit beside the one that it is held against. */
    public String number(double number, double beside) {
        return text(number, beside);
    }

    public String in(String unit, double value) {
        return text(value) + " " + unit;
    }
}
