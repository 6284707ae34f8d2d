/**
 * What a field of a file means and may be, and how Java names are spelt in files.
 *
 * <p>May touch no other package of the house.
 */
package evenrise.model.contract;
