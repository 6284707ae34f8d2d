package evenrise.model.project;

/**
 * Code letter on a motor's nameplate: apparent power at locked rotor over horsepower, from … to. NEC table 430.7(B), read in
 * secondary copies; I, O and Q are not used.
 */
public enum CodeLetter {
    A(0, 3.14),
    B(3.15, 3.54),
    C(3.55, 3.99),
    D(4.0, 4.49),
    E(4.5, 4.99),
    F(5.0, 5.59),
    G(5.6, 6.29),
    H(6.3, 7.09),
    J(7.1, 7.99),
    K(8.0, 8.99),
    L(9.0, 9.99),
    M(10.0, 11.19),
    N(11.2, 12.49),
    P(12.5, 13.99),
    R(14.0, 15.99),
    S(16.0, 17.99),
    T(18.0, 19.99),
    U(20.0, 22.39),
    /** Open above. */
    V(22.4, 22.4);

    private final double leastKvaPerHorsepower;
    private final double mostKvaPerHorsepower;

    CodeLetter(double leastKvaPerHorsepower, double mostKvaPerHorsepower) {
        this.leastKvaPerHorsepower = leastKvaPerHorsepower;
        this.mostKvaPerHorsepower = mostKvaPerHorsepower;
    }

    public double leastKvaPerHorsepower() {
        return leastKvaPerHorsepower;
    }

    public double mostKvaPerHorsepower() {
        return mostKvaPerHorsepower;
    }
}
