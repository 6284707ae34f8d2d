package evenrise.model.measured;

/** What was measured. */
public enum MeasuredQuantity {
    IDLE("idle current", "A"),
    RUNNING("running current", "A"),
    PEAK("inrush peak", "A"),
    HALF("inrush half-life", "ms"),
    NEUTRAL("neutral current", "A"),
    VOLTAGE("voltage to neutral", "V"),
    ON("comes on", "s"),
    OFF("goes off", "s"),
    PHASE("phase", ""),
    ROTATION("phase rotation", ""),
    INSULATION("insulation", "MΩ"),
    LEAKAGE("leakage", "mA"),
    TRIP_CURRENT("trips at", "mA"),
    TRIP_TIME("trips after", "ms"),
    RESULT("result on the sheet", "");

    private final String words;
    private final String unit;

    MeasuredQuantity(String words, String unit) {
        this.words = words;
        this.unit = unit;
    }

    public String words() {
        return words;
    }

    public String unit() {
        return unit;
    }
}
