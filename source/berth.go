package source

var berth = []Work{
	{Key: "ufc-4-159-03", Title: "UFC 4-159-03, Design: Moorings", Where: "US Department of Defense, 3 October 2005"},
	{Key: "towing-manual", Title: "US Navy Towing Manual, SL740-AA-MAN-010", Where: "Naval Sea Systems Command; reprinted as TB 55-1900-232-10"},
	{Key: "schureman", Author: "Paul Schureman", Title: "Manual of Harmonic Analysis and Prediction of Tides, Special Publication 98", Where: "US Coast and Geodetic Survey, revised 1940"},
	{Key: "noaa-tides", Title: "Harmonic constants and tide predictions of US stations", Where: "NOAA, Center for Operational Oceanographic Products and Services, public domain"},
	{Key: "kuwashima-hogben", Author: "S. Kuwashima and N. Hogben", Title: "The estimation of wave height and wind speed persistence statistics from cumulative probability distributions", Where: "Coastal Engineering 9, 1986, pages 563 to 590"},
	{Key: "equimar-access", Author: "T. Stallard, J.-F. Dhedin, S. Saviot, C. Noguera", Title: "Procedures for Estimating Site Accessibility and Appraisal of Implications of Site Accessibility, EquiMar deliverable D7.4.1", Where: "University of Manchester and EDF, August 2010"},
	{Key: "resourcecode", Title: "Acceptance test of the weather windows of a wave climate library, tests/test_weather_window.py", Where: "IFREMER, Brest, ResourceCode project; commit 044302d"},
	{Key: "ittc-57", Title: "1957 ITTC model-ship correlation line", Where: "8th International Towing Tank Conference; tabled in National Physical Laboratory, Ship Report 142, 1970"},
}
